/**
 * When readings that near a bath or the air come to their limit, told from what was measured.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./curve.js").Curve} Curve
 * @typedef {{kind: "there" | "more" | "never" | "in_time" | "late", limit: number, at?: number, by?: number, curve?: Curve}} Foretold
 */

import { fitCurve, timeOf } from "./curve.js";
import { judge } from "./judging.js";
import { isNamedAfter } from "./records.js";

/**
 * The series of a reading: one for each lot and name, with what it nears.
 * @param {string} of @param {{toward?: string, otherwise: string}} nears @param {Entry[]} standing @param {Record<string, number | string>} values
 * @returns {{lot: string, name: string, entries: Entry[], toward: number | undefined}[]}
 */
export function seriesOf(of, nears, standing, values) {
  /** @type {Map<string, Entry[]>} */ const found = new Map();
  for (const entry of standing) {
    if (entry.of !== of || entry.value === undefined) continue;
    const key = `${entry.lot ?? ""}\n${entry.name ?? ""}`;
    const series = found.get(key);
    if (series) series.push(entry);
    else found.set(key, [entry]);
  }
  return [...found].map(([key, entries]) => {
    const [lot, name] = key.split("\n");
    const baths = standing.filter((entry) => entry.of === nears.toward && (entry.lot ?? "") === lot && entry.value !== undefined);
    const bath = baths.findLast((entry) => isNamedAfter(name, entry.name)) ?? baths[baths.length - 1];
    const otherwise = values[nears.otherwise];
    return { lot, name, entries, toward: bath?.value ?? (typeof otherwise === "number" ? otherwise : undefined) };
  });
}

/** @param {Entry[]} entries  of one series, in order @param {number | undefined} toward @returns {Foretold | null} null without a limit to come to */
export function foretell(entries, toward) {
  const last = entries[entries.length - 1];
  const limit = last?.limit?.high;
  if (limit === undefined || last.value === undefined) return null;
  const by = last.limit?.by;
  if (judge(last.value, { high: limit }) === "inside") return { kind: "there", limit };
  if (entries.length < 2 || toward === undefined) return { kind: "more", limit, by };
  const curve = fitCurve(entries.map(({ at, value }) => ({ at, value: Number(value) })), toward);
  const at = curve && timeOf(curve, limit);
  if (!curve || at === null) return { kind: "never", limit, by };
  return { kind: by !== undefined && at > by ? "late" : "in_time", limit, at, by, curve };
}

/**
 * What is told of each last reading that is on the way and will not be there in time: act while there still is time.
 * @param {Record<string, import("./reading_items.js").Reading>} items @param {Entry[]} standing @param {Record<string, number | string>} values
 * @returns {Map<string, Foretold>}  by the reading's id
 */
export function tooSlow(items, standing, values) {
  /** @type {Map<string, Foretold>} */ const found = new Map();
  for (const [of, { curve, too_slow }] of Object.entries(items)) {
    for (const { entries, toward } of curve && too_slow ? seriesOf(of, curve, standing, values) : []) {
      const last = entries[entries.length - 1];
      const foretold = judge(Number(last.value), last.limit, last.at) === "on_the_way" && foretell(entries, toward);
      if (foretold && ["late", "never"].includes(foretold.kind)) found.set(last.id, foretold);
    }
  }
  return found;
}
