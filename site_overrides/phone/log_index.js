/**
 * The entries of one run, kept so that a new one costs the same whether it is the tenth or the five-thousandth.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {{first: Entry, last: Entry}} Ends
 */

import { clockOf, counterOf, phoneOf, placesOf, standing } from "./records.js";

const LIST = "list ";
const STRETCHING = ["reading", "count", "mark", "list"];

export function makeIndex() {
  /** @type {Entry[]} */ const all = [];
  /** @type {Entry[]} */ let counting = [];
  /** @type {Set<string>} */ const corrected = new Set();
  /** @type {Map<string, {clock: number, counter: number}>} */ const latest = new Map();
  /** By list, by lot, by step. @type {Map<string, Map<string, Map<string, Entry[]>>>} */ const ticks = new Map();
  /** By thing, lot and name. @type {Map<string, Ends>} */ const ends = new Map();
  /** @type {Set<string>} */ const lost = new Set();
  let newest = { at: -Infinity, phone: "" };
  let wentBack = false;
  let isForked = false; // an entry was corrected twice
  let isSorted = true;
  let knowsEnds = true;

  /** @param {Entry} entry */
  function add(entry) {
    all.push(entry);
    if (entry.corrects) {
      isForked ||= corrected.has(entry.corrects);
      takeOut(entry.corrects);
      isSorted &&= !isForked;
    }
    if (entry.gone || corrected.has(entry.id) || !isSorted) return;
    const before = latest.get(phoneOf(entry));
    const clock = Math.max(clockOf(entry), before?.clock ?? 0);
    const at = entry.made === undefined ? clock : entry.at;
    if (before && clockOf(entry) < before.clock && lost.has(phoneOf(entry))) isSorted = false;
    const isLater = at > newest.at || (at === newest.at && phoneOf(entry) === newest.phone);
    isSorted &&= isLater && counterOf(entry) > (before?.counter ?? -1);
    if (isSorted) append(entry, at, clock);
  }

  /** @param {Entry} entry @param {number} at @param {number} clock */
  function append(entry, at, clock) {
    counting.push(entry);
    wentBack ||= clock > clockOf(entry);
    const before = latest.get(phoneOf(entry));
    if (!before || before.counter < counterOf(entry)) latest.set(phoneOf(entry), { clock, counter: counterOf(entry) });
    newest = { at, phone: phoneOf(entry) };
    if (entry.kind === "tick") addTick(entry);
    else if (STRETCHING.includes(entry.kind)) stretch(entry);
  }

  const ticksIn = (/** @type {string} */ list, /** @type {string} */ lot) => ticks.get(list)?.get(lot) ?? new Map();

  /** @param {Entry} entry */
  function addTick(entry) {
    const { of: list = "", lot = "", step = "" } = entry;
    const lots = ticks.get(list) ?? new Map();
    const steps = lots.get(lot) ?? new Map();
    ticks.set(list, lots.set(lot, steps.set(step, [...(steps.get(step) ?? []), entry])));
  }

  /** @param {Entry} entry */
  function takeTick({ id, of: list = "", lot = "", step = "" }) {
    const steps = ticksIn(list, lot);
    const left = (steps.get(step) ?? []).filter((/** @type {Entry} */ tick) => tick.id !== id);
    if (left.length) steps.set(step, left);
    else steps.delete(step);
    if (!steps.size) ticks.get(list)?.delete(lot);
  }

  /** @param {Entry} entry */
  function stretch(entry) {
    const key = `${entry.kind === "list" ? LIST : ""}${entry.of}\n${entry.lot ?? ""}\n${entry.name ?? ""}`;
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
    lost.add(phoneOf(gone));
    knowsEnds &&= gone.kind === "tick";
    if (gone.kind === "tick") takeTick(gone);
  }

  /** Everything anew, where something came that belongs further back. */
  function settle() {
    if (isSorted && knowsEnds) return;
    const sorted = isSorted ? counting : standing(all);
    counting = [];
    for (const kept of [latest, ticks, ends, lost]) kept.clear();
    wentBack = false;
    isSorted = knowsEnds = true;
    for (const { entry, at, clock } of placesOf(sorted)) append(entry, at, clock);
  }

  /** @template Found @param {() => Found} find */
  const settled = (find) => {
    settle();
    return find();
  };

  /** @param {string} of @param {string} [lot] */
  const lasts = (of, lot) => settled(() => {
    const begins = lot === undefined ? `${of}\n` : `${of}\n${lot}\n`;
    const found = [];
    for (const [key, { last }] of ends) if (key.startsWith(begins)) found.push(last);
    return found;
  });

  return {
    add,
    /** All entries, in the order in which they came to this phone. */
    all: () => all,
    /** Those that count, in order. */
    standing: () => settled(() => counting),
    /** The standing ticks of a step. @param {string} list @param {string} lot @param {string} step @returns {Entry[]} */
    ticks: (list, lot, step) => settled(() => ticksIn(list, lot).get(step) ?? []),
    /** The steps of a list that are ticked, each with its tick. @param {string} list @param {string} [lot] @returns {Map<string, Entry>} */
    ticksOf: (list, lot = "") => settled(() => new Map([...ticksIn(list, lot)].map(([step, [tick]]) => [step, tick]))),
    /** The rounds of a list in which something was ticked. @param {string} list @returns {Set<string>} */
    roundsOf: (list) => settled(() => new Set(ticks.get(list)?.keys())),
    /** A list as it stood when its first step was ticked. @param {string} list @returns {Record<string, string> | undefined} */
    printsOf: (list) => settled(() => ends.get(`${LIST}${list}\n\n`)?.first.prints),
    /** The last of a thing, of a lot where one is given. @param {string} of @param {string} [lot] */
    last: (of, lot) => lasts(of, lot).reduce((one, other) => (one && one.at > other.at ? one : other), /** @type {Entry | undefined} */ (undefined)),
    /** The last of each that has a name of its own, of a lot where one is given. */
    lasts,
    /** The first and the last of each thing, lot and name: all that limits and rhythms ask for. */
    ends: () => settled(() => [...new Set([...ends.values()].flatMap(({ first, last }) => [first, last]))]),
  };
}
