/**
 * Readings against their limits, and readings that are due.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./records.js").Limit} Limit
 * @typedef {{low?: string, high?: string, since?: string, until?: string[], within?: string, rhythm?: string,
 *   per_lot?: boolean}} Item  one of `readings` in readings.js
 * @typedef {"free" | "inside" | "on_the_way" | "low" | "high"} Verdict
 */

import { isNamedAfter, standing } from "./records.js";

const SLACK_OF_LIMIT = 1e-9;

/**
 * The limits in force for a reading of a lot, from the day's values; what is refused there limits nothing.
 * @param {Item} item @param {Record<string, number | string>} values @param {Entry[]} entries @param {string} [lot]
 * @returns {Limit}
 */
export function limitFor(item, values, entries, lot = "") {
  /** @type {Limit} */ const limit = {};
  for (const side of /** @type {("low" | "high")[]} */ (["low", "high"])) {
    const value = values[item[side] ?? ""];
    if (typeof value === "number") limit[side] = value;
  }
  const allowed = values[item.within ?? ""];
  const first = firstsOf(item, standing(entries)).get(item.per_lot ? lot : "");
  if (typeof allowed === "number" && first) limit.by = Math.round(first.at + allowed * 1000);
  return limit;
}

/**
 * Where a value lies. While the time allowed runs, what must still be reached is on the way: the upper limit, or the
 * lower where there is no upper one.
 * @param {number} value @param {Limit} [limit] @param {number} [at] @returns {Verdict}
 */
export function judge(value, { low, high, by } = {}, at = Infinity) {
  const early = by !== undefined && at <= by;
  if (low !== undefined && value < low - slackOf(low)) return early && high === undefined ? "on_the_way" : "low";
  if (high !== undefined && value > high + slackOf(high)) return early ? "on_the_way" : "high";
  return low === undefined && high === undefined ? "free" : "inside";
}

/** @param {number} limit */
const slackOf = (limit) => SLACK_OF_LIMIT * Math.max(1, Math.abs(limit));

/**
 * When each reading is due next, the most pressing first. Each lot, and each name that was read, has its own time; a
 * reading with a time allowed is done once it lies inside its limits. What ends the rhythm ends it for all of the lot,
 * or for what it names.
 * @param {Record<string, Item>} items @param {Record<string, number | string>} values @param {Entry[]} entries
 * @returns {{of: string, lot: string, name: string, at: number}[]}
 */
export function due(items, values, entries) {
  const all = standing(entries);
  const found = Object.entries(items).flatMap(([of, item]) => {
    const every = values[item.rhythm ?? ""];
    if (typeof every !== "number") return [];
    const firsts = firstsOf(item.since ? item : { ...item, since: of }, all);
    return [...firsts].flatMap(([lot, first]) => {
      const later = all.slice(all.indexOf(first)).filter((entry) => inLot(item, entry, lot));
      const ends = later.filter((entry) => item.until?.includes(entry.of ?? ""));
      if (ends.some(({ name }) => name === undefined)) return [];
      const mine = later.filter((entry) => entry.of === of);
      const lasts = [...new Map(mine.map((entry) => [entry.name ?? "", entry]))].filter(([, last]) => !isOver(last, ends, later) && !(item.within && isInside(last)));
      const waiting = mine.length ? lasts.map(([name, { at }]) => ({ name, at })) : [{ name: "", at: first.at }];
      return waiting.map(({ name, at }) => ({ of, lot, name, at: at + every * 1000 }));
    });
  });
  return found.sort((one, other) => one.at - other.at || (one.of + one.lot + one.name < other.of + other.lot + other.name ? -1 : 1));
}

/** @param {Entry} last @param {Entry[]} ends @param {Entry[]} all  in order */
export const isOver = (last, ends, all) => ends.some((end) => (end.at >= last.at || all.indexOf(end) > all.indexOf(last)) && isNamedAfter(last.name, end.name));

/** @param {Entry} entry */
const isInside = ({ value, limit, at }) => value !== undefined && judge(value, limit, at) === "inside";

/** With what each lot began, or the day under the empty name. @param {Item} item @param {Entry[]} all  in order */
function firstsOf(item, all) {
  /** @type {Map<string, Entry>} */ const firsts = new Map();
  for (const entry of all) {
    if (item.since === undefined || entry.of !== item.since) continue;
    const lot = item.per_lot ? entry.lot ?? "" : "";
    if (!firsts.has(lot)) firsts.set(lot, entry);
  }
  return firsts;
}

/** @param {Item} item @param {Entry} entry @param {string} lot */
const inLot = (item, entry, lot) => !item.per_lot || (entry.lot ?? "") === lot;
