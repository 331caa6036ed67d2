/**
 * The entries of one run, kept so that a new one costs the same whether it is the tenth or the five-thousandth.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {{first: Entry, last: Entry}} Ends
 */

import { counterOf, phoneOf, standing } from "./records.js";

/** Under what a tick is found. @param {string} list @param {string} lot @param {string} step */
const tickKey = (list, lot, step) => `${list}\n${lot}\n${step}`;

const LIST = "list ";
const STRETCHING = ["reading", "count", "mark", "list"];

export function makeIndex() {
  /** @type {Entry[]} */ const all = [];
  /** @type {Entry[]} */ let counting = [];
  /** @type {Set<string>} */ const corrected = new Set();
  /** @type {Map<string, {at: number, counter: number}>} */ const latest = new Map();
  /** @type {Map<string, Entry[]>} */ const ticks = new Map();
  /** @type {Map<string, Ends>} */ const ends = new Map();
  let newest = { at: -Infinity, phone: "" };
  let wentBack = false;
  let isSorted = true;
  let knowsEnds = true;

  /** @param {Entry} entry */
  function add(entry) {
    all.push(entry);
    if (entry.corrects) takeOut(entry.corrects);
    if (entry.gone || corrected.has(entry.id) || !isSorted) return;
    const before = latest.get(phoneOf(entry));
    const at = Math.max(entry.at, before?.at ?? 0);
    const isLater = at > newest.at || (at === newest.at && phoneOf(entry) === newest.phone);
    isSorted = isLater && counterOf(entry) > (before?.counter ?? -1);
    if (isSorted) append(entry, at);
  }

  /** @param {Entry} entry @param {number} at */
  function append(entry, at) {
    counting.push(entry);
    wentBack ||= at > entry.at;
    latest.set(phoneOf(entry), { at, counter: counterOf(entry) });
    newest = { at, phone: phoneOf(entry) };
    if (entry.kind === "tick") addTick(entry);
    else if (STRETCHING.includes(entry.kind)) stretch(entry);
  }

  /** @param {Entry} entry */
  function addTick(entry) {
    const key = tickKey(entry.of ?? "", entry.lot ?? "", entry.step ?? "");
    ticks.set(key, [...(ticks.get(key) ?? []), entry]);
  }

  /** @param {Entry} entry */
  function stretch(entry) {
    const key = `${entry.kind === "list" ? LIST : ""}${entry.of}\n${entry.lot ?? ""}`;
    ends.set(key, { first: ends.get(key)?.first ?? entry, last: entry });
  }

  /** @param {string} id */
  function takeOut(id) {
    corrected.add(id);
    if (!isSorted) return;
    const place = counting.findLastIndex((entry) => entry.id === id);
    if (place < 0) return;
    const [gone] = counting.splice(place, 1);
    // Where a clock was set back, what came after may have stood where it did because of this one.
    isSorted = !wentBack;
    knowsEnds &&= gone.kind === "tick";
    if (gone.kind === "tick") {
      const key = tickKey(gone.of ?? "", gone.lot ?? "", gone.step ?? "");
      ticks.set(key, (ticks.get(key) ?? []).filter((tick) => tick.id !== id));
    }
  }

  /** Everything anew, where something came that belongs further back. */
  function settle() {
    if (isSorted && knowsEnds) return;
    const sorted = isSorted ? counting : standing(all);
    counting = [];
    for (const kept of [latest, ticks, ends]) kept.clear();
    wentBack = false;
    isSorted = knowsEnds = true;
    for (const entry of sorted) append(entry, Math.max(entry.at, latest.get(phoneOf(entry))?.at ?? 0));
  }

  /** @template Found @param {() => Found} find */
  const settled = (find) => {
    settle();
    return find();
  };

  return {
    add,
    /** All entries, in the order in which they came to this phone. */
    all: () => all,
    /** Those that count, in order. */
    standing: () => settled(() => counting),
    /** The standing ticks of a step. @param {string} list @param {string} lot @param {string} step */
    ticks: (list, lot, step) => settled(() => ticks.get(tickKey(list, lot, step)) ?? []),
    /** The steps of a list that are ticked, each with its tick. @param {string} list @param {string} [lot] */
    ticksOf: (list, lot = "") => settled(() => {
      const mark = `${list}\n${lot}\n`;
      const found = [...ticks].filter(([key, each]) => key.startsWith(mark) && each.length);
      return new Map(found.map(([key, each]) => [key.slice(mark.length), each[0]]));
    }),
    /** The rounds of a list in which something was ticked. @param {string} list */
    roundsOf: (list) => settled(() => {
      const found = [...ticks].filter(([key, each]) => key.startsWith(`${list}\n`) && each.length);
      return new Set(found.map(([key]) => key.split("\n")[1]));
    }),
    /** A list as it stood when its first step was ticked. @param {string} list @returns {Record<string, string> | undefined} */
    printsOf: (list) => settled(() => ends.get(`${LIST}${list}\n`)?.first.prints),
    /** The last of a thing, of a lot where one is given. @param {string} of @param {string} [lot] */
    last: (of, lot) => settled(() => {
      if (lot !== undefined) return ends.get(`${of}\n${lot}`)?.last;
      return [...ends].filter(([key]) => key.startsWith(`${of}\n`)).map(([, { last }]) => last).reduce((one, other) => (one && one.at > other.at ? one : other), /** @type {Entry | undefined} */ (undefined));
    }),
    /** The first and the last of each thing and lot: all that limits and rhythms ask for. */
    ends: () => settled(() => [...new Set([...ends.values()].flatMap(({ first, last }) => [first, last]))]),
  };
}
