/**
 * What the entries of a day come to, under the names that formulas about the day use. `generator/records/figures.py` is
 * the same, and says what the names are.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./reading_items.js").Reading} Reading
 * @typedef {Record<string, number | string>} Values
 */

import { mean, reachedAt } from "./curve.js";
import { isNamedAfter, standing } from "./records.js";

const KINDS = ["reading", "count", "mark"];
const DAY = 86_400_000;

/**
 * @param {Entry[]} entries  of one run @param {Record<string, Reading>} readings
 * @param {Values} plan  holds what curves near where nobody has read it
 * @returns {Record<string, number>}
 */
export function figuresOf(entries, readings, plan) {
  const counting = standing(entries).filter(({ kind }) => KINDS.includes(kind));
  const byReading = Object.fromEntries(Object.keys(readings).map((name) => [name, counting.filter(({ of }) => of === name)]));
  /** @type {Record<string, number>} */ const values = {};
  for (const [name, item] of Object.entries(readings)) {
    const found = byReading[name];
    if (found.length) Object.assign(values, ofReading(name, item, found));
    else if (item.none_if_silent) Object.assign(values, { [`${name}_number`]: 0, [`${name}_total`]: 0 });
    const times = reached(item, found, byReading, plan);
    if (times.length) values[`${name}_reached`] = mean(times);
  }
  return values;
}

/** @param {string} name @param {Reading} item @param {Entry[]} found */
function ofReading(name, item, found) {
  const measured = found.filter(({ value }) => value !== undefined);
  const all = measured.map(({ value }) => Number(value));
  const ends = seriesOfEach(measured).map((series) => [Number(series[0].value), Number(series[series.length - 1].value)]);
  const side = (/** @type {"low" | "high"} */ end) => mean(measured.flatMap(({ limit }) => limit?.[end] ?? []));
  const known = {
    number: found.length,
    began: secondsOfDay(found[0]),
    ended: secondsOfDay(found[found.length - 1]),
    first: mean(ends.map(([first]) => first)),
    last: mean(ends.map(([, last]) => last)),
    mean: mean(all),
    low: side("low"),
    high: side("high"),
    total: item.adds_up && all.length ? all.reduce((total, value) => total + value, 0) : NaN,
  };
  return Object.fromEntries(Object.entries(known).filter(([, value]) => !Number.isNaN(value)).map(([end, value]) => [`${name}_${end}`, value]));
}

/** Seconds from the first reading of each thing until its limit was passed. @param {Reading} item @param {Entry[]} found @param {Record<string, Entry[]>} byReading @param {Values} plan */
function reached(item, found, byReading, plan) {
  if (!item.curve) return [];
  return seriesOfEach(found).flatMap((series) => {
    const toward = towardOf(item, series[0], byReading, plan);
    const last = series.findLast(({ limit }) => limit && (limit.high ?? limit.low) !== undefined)?.limit;
    const limit = last?.high ?? last?.low;
    const points = series.filter(({ value }) => value !== undefined).map(({ at, value }) => ({ at, value: Number(value) }));
    if (toward === undefined || limit === undefined || !points.length) return [];
    const at = reachedAt(points, toward, limit);
    return at !== null && at > points[0].at ? [(at - points[0].at) / 1000] : [];
  });
}

/** What a curve nears: the mean of that reading by the thing's name, else of its lot, else of any lot, else the plan's figure. @param {Reading} item @param {Entry} thing @param {Record<string, Entry[]>} byReading @param {Values} plan */
function towardOf({ curve }, { lot = "", name }, byReading, plan) {
  const read = (byReading[curve?.toward ?? ""] ?? []).filter(({ value }) => value !== undefined);
  const ofLot = read.filter((entry) => (entry.lot ?? "") === lot);
  const named = ofLot.filter((entry) => isNamedAfter(name, entry.name));
  const near = [named, ofLot, read].find(({ length }) => length) ?? [];
  const planned = plan[curve?.otherwise ?? ""];
  return near.length ? mean(near.map(({ value }) => Number(value))) : typeof planned === "number" ? planned : undefined;
}

/** Entries of each thing read, in order. @param {Entry[]} found */
function seriesOfEach(found) {
  /** @type {Map<string, Entry[]>} */ const series = new Map();
  for (const entry of found) {
    const key = JSON.stringify([entry.lot ?? "", entry.name ?? ""]);
    series.set(key, [...(series.get(key) ?? []), entry]);
  }
  return [...series.values()];
}

/** Seconds since the midnight before the run began, by the phone's wall clock. @param {Entry} entry */
function secondsOfDay({ run, at, zone }) {
  const date = run.slice(0, 10);
  const midnight = Date.parse(`${date}T00:00:00Z`);
  // Some browsers take a 30 February for a day of March.
  const isDay = date >= "0001" && !Number.isNaN(midnight) && new Date(midnight).toISOString().startsWith(date);
  return (at + zone * 60_000 - (isDay ? midnight : Math.floor(at / DAY) * DAY)) / 1000;
}
