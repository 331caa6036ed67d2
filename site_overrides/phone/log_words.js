/**
 * What the log says: values with their units, limits, verdicts.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./records.js").Limit} Limit
 * @typedef {import("./logging.js").Page} Page
 */

import { judge } from "./judging.js";
import { words } from "./log_content.js";
import { loaded, shower } from "./paint.js";
import { readingMeasures, readings } from "./readings.js";
import { timeIn } from "./runs.js";
import { showing } from "./showing.js";
import { wear } from "./wearing.js";
import { symbols } from "./words.js";
import { clock, filled } from "./words_said.js";

const root = new URL("../", import.meta.url);
wear([new URL("look/log.css", root).href]);

/** @type {Record<string, import("./reading_items.js").Reading>} */
export const items = readings;

/** @param {string} id @param {import("./words_said.js").Parts} [parts] */
export const tell = (id, parts = {}) => filled(words[id], parts);

/** @param {string} of */
export const titleOf = (of) => (Object.hasOwn(items, of) ? items[of].title : tell("unknown", { of }));

/** Which of its kind was read, such as Box 1. @param {{of?: string, name?: string}} entry */
export const thingOf = ({ of = "", name }) => name && [Object.hasOwn(items, of) && items[of].one, name].filter(Boolean).join(" ");

/** @typedef {Awaited<ReturnType<typeof makeTeller>>} Teller */

/** @param {Page} page */
export async function makeTeller({ plan }) {
  const formulas = await loaded(plan);
  const { show, showBoth } = showing({ ...formulas.measures, ...readingMeasures }, formulas.units, symbols);
  const showQuantity = shower(formulas);

  /** A value of a reading in the units that stand first. @param {string} of @param {number} value */
  const value = (of, value) => (items[of]?.measure ? show(value, items[of].measure, plan.system()) : String(value));

  /** @param {string} of @param {Limit} [limit] */
  function limit(of, { low, high, by } = {}) {
    const parts = { low: low === undefined ? "" : value(of, low), high: high === undefined ? "" : value(of, high) };
    const said = low === undefined ? (high === undefined ? "" : tell("limit_most", parts)) : tell(high === undefined ? "limit_least" : "limit_between", parts);
    return said && by ? tell("limit_by", { limit: said, time: clock(by) }) : said;
  }

  return {
    value,
    limit,
    /** The unit in which readings of a measure are typed. @param {string} measure @returns {{unit: import("./showing.js").Unit, digits: number}} */
    unitOf(measure) {
      const { unit, digits } = readingMeasures[measure][plan.system()];
      return { unit: formulas.units[unit], digits: digits ?? 0 };
    },
    /** A value with its unit, and in brackets in the other. @param {string} of @param {number} number */
    both: (of, number) => (items[of]?.measure ? showBoth(number, items[of].measure, plan.system()) : String(number)),
    /** A sentence of content with the numbers of the day in it. @param {string} sentence @param {Record<string, number | string>} values */
    sentence: (sentence, values) => sentence.replace(/\{([a-z0-9_]+)( first)?\}/g, (_, id, first) => {
      return id in values ? showQuantity(id, values[id], plan.system(), first ? "first" : "both") : "–";
    }),
    /** A span of time by a measure of content. @param {string} id @param {number} seconds */
    quantity: (id, seconds) => showQuantity(id, seconds, plan.system(), "first"),
    /** What an entry says, without its time. @param {Entry} entry */
    written: (entry) => (entry.value !== undefined && entry.of ? writtenOf(entry, value(entry.of, entry.value)) : entry.text ?? ""),
  };
}

/** As it was typed where that reads differently, and as this phone shows it. @param {Entry} entry @param {string} shown */
const writtenOf = ({ written }, shown) => (!written ? shown : plain(written) === plain(shown) ? written : `${written} (${shown})`);

/** @param {string} text */
const plain = (text) => text.replace(/[\s\u00a0]/g, "").replace(/(\d)\.0+(?!\d)/, "$1");

/** When an entry was written down, where that was not the time it tells of. @param {Entry} entry */
export const madeWords = ({ made, corrects }) => (made === undefined ? "" : tell(corrects ? "corrected_at" : "written_at", { time: clock(made) }));

/** The time that an entry tells of, with when it was written down. @param {Entry} entry */
export const timesOf = (entry) => [timeIn(entry.run, entry.at), madeWords(entry)].filter(Boolean).join(", ");

/** @param {Entry} entry */
export const verdictOf = (entry) => (entry.value === undefined ? "free" : judge(entry.value, entry.limit, entry.at));

/** @param {Entry} entry */
export const isOutside = (entry) => ["low", "high"].includes(verdictOf(entry));
