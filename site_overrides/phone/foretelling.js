/**
 * When readings that near a bath or the air come to their limit, told from what was measured.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./curve.js").Curve} Curve
 * @typedef {{kind: "there" | "more" | "never" | "in_time" | "late", limit: number, at?: number, by?: number, curve?: Curve}} Foretold
 */

import { fitCurve, timeOf } from "./curve.js";
import { judge } from "./judging.js";

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
    found.set(key, [...(found.get(key) ?? []), entry]);
  }
  return [...found].map(([key, entries]) => {
    const [lot, name] = key.split("\n");
    const bath = standing.findLast((entry) => entry.of === nears.toward && (entry.lot ?? "") === lot && entry.value !== undefined);
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
