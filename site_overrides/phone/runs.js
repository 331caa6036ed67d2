/**
 * A run is one day's work: the plan as it was frozen when the day began, and all entries since. It is called after its
 * date and counted within it, so that phones without a signal begin the same one.
 *
 * @typedef {import("./store.js").Store} Store
 * @typedef {import("./log.js").Log} Log
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {{begun: number, ended?: number}} Run
 * @typedef {{store: Store, log: Log, plan: Plan}} Page
 */

import { loaded } from "./plan_state.js";
import { phoneOf } from "./records.js";
import { clock, date, say } from "./words_said.js";

const CURRENT = "state/run";

/** The id of the run that is going on; empty before the first. @param {Store} store @returns {string} */
export const currentRun = (store) => store.get(CURRENT) ?? "";

/** @param {Store} store @param {string} id @returns {Run | undefined} */
export const runOf = (store, id) => store.get(`run/${id}`);

/** The id of the run that takes in what is written down now; empty where none is open. @param {Store} store @returns {string} */
export const openRun = (store) => (runOf(store, currentRun(store))?.ended ? "" : currentRun(store));

/** Where the lot that is worked on is kept; one that is chosen while no run is open is kept for the next. @param {string} run */
export const keyOfLot = (run) => `lot/${run}`;

/** @param {Store} store @returns {[string, Run][]} newest first */
export function allRuns(store) {
  const runs = store.entries("run/").map(([key, run]) => /** @type {[string, Run]} */ ([key.slice("run/".length), run]));
  return runs.sort(([one], [other]) => compareRuns(other, one));
}

/** @param {string} one @param {string} other */
const compareRuns = (one, other) => one.slice(0, 10).localeCompare(other.slice(0, 10)) || Number(one.slice(11)) - Number(other.slice(11));

/** @type {Promise<string> | undefined} */
let beginning;

/**
 * The run that is going on, or a new one; empty where nobody wants a new one, or says of which day it is.
 * @param {Page} page @param {boolean} [isAhead] whether what is written is done ahead of its day; else the page tells @returns {Promise<string>}
 */
export async function runToWriteTo(page, isAhead = isAheadHere()) {
  const open = openRun(page.store);
  if (open && goesOn(page.store, open)) return open;
  if (!beginning && !open && currentRun(page.store) && !confirm(say("run_ended_ask"))) return "";
  return (beginning ??= beginAnew(page, isAhead).finally(() => (beginning = undefined)));
}

/** Whether the page has a list that is worked through ahead of its day. */
export const isAheadHere = () => document.querySelector("[data-list][data-ahead]") !== null;

/** Today, or the day that is chosen; where that goes on already, nothing begins. @param {Page} page @param {boolean} isAhead */
export async function beginAnew(page, isAhead) {
  const day = isAhead ? await (await import("./day_asked.js")).askDay() : dayName(new Date());
  const open = openRun(page.store);
  return day && (dayOf(open) === day ? open : beginRun(page, day));
}

/** A run is called after its day, and may be begun before it. @param {string} id */
const dayOf = (id) => id.slice(0, "2000-01-01".length);

/** The day of a run as people say it. @param {string} id */
export const dateOf = (id) => date(new Date(`${dayOf(id)}T12:00`).getTime());

/** A time of a run; with its date where it lies on another than the run's. @param {string} id @param {number} at */
export const timeIn = (id, at) => (dayName(new Date(at)) === dayOf(id) ? clock(at) : `${date(at)}, ${clock(at)}`);

/** Whether the day of a run is over. @param {string} id */
export const isPast = (id) => dayOf(id) < dayName(new Date());

/** Whether a run takes in what is written now: once in each new date that is asked. @param {Store} store @param {string} id */
function goesOn(store, id) {
  const today = dayName(new Date());
  if (!isPast(id) || store.get(`past/${id}`) === today) return true;
  if (confirm(say("run_stale_ask", { day: dateOf(id) }))) return false;
  store.put(`past/${id}`, today);
  return true;
}

/** Begins a run, freezes the plan into it, and makes it the current one. @param {Page} page @param {string} [day] @returns {Promise<string>} */
export async function beginRun(page, day = dayName(new Date())) {
  const before = allRuns(page.store).filter(([id]) => id.startsWith(day)).map(([id]) => Number(id.slice(day.length + 1)) || 0);
  const id = `${day}-${Math.max(0, ...before) + 1}`;
  await page.log.addAll(id, [await frozenPlan(page.plan)], [[`run/${id}`, { begun: Date.now() }], ...goInto(page.store, id)]);
  return id;
}

/** What makes a run the one that goes on, with the lot that was chosen before. @param {Store} store @param {string} id @returns {[string, any][]} */
export function goInto(store, id) {
  const lot = store.get(keyOfLot(""));
  return [[CURRENT, id], ...(lot === undefined ? [] : /** @type {[string, any][]} */ ([[keyOfLot(id), lot], [keyOfLot(""), undefined]]))];
}

/** The same for a run of today that came from another phone, unless one goes on here that is not over, or was said to go on. @param {Store} store @param {string} today */
export function joinToday(store, today) {
  const open = openRun(store);
  const stays = open && (!isPast(open) || store.get(`past/${open}`) === dayName(new Date()));
  return stays ? [] : goInto(store, today);
}

/** Everything that the plan says now, settings and results. @param {Plan} plan @returns {Promise<Partial<Entry>>} */
export async function frozenPlan(plan) {
  const [formulas, { version }] = await Promise.all([loaded(plan), import("./log_content.js")]);
  const { settings, day } = plan.compute(formulas);
  return { kind: "plan", values: { ...settings, ...day.values }, text: version };
}

/**
 * When a day was signed and finished, as its entries tell: nothing but merges follows from the phone on which it was signed.
 * @param {Entry[]} standing @returns {Entry | undefined}
 */
export function finishing(standing) {
  const signed = standing.findLast(({ kind, of }) => kind === "sign" && of === undefined);
  if (!signed) return undefined;
  const after = standing.slice(standing.indexOf(signed) + 1);
  return after.some((entry) => phoneOf(entry) === phoneOf(signed) && entry.kind !== "merge") ? undefined : signed;
}

/** Closes a run: it can be looked at and shared from then on, and takes in what other phones bring. @param {Store} store @param {string} id */
export const endRun = (store, id) => store.put(`run/${id}`, { ...runOf(store, id), ended: Date.now() });

/** Goes on with a run that was closed too soon, or with an earlier one of this day. @param {Store} store @param {string} id */
export const goOnWith = (store, id) => store.keep([[`run/${id}`, { begun: runOf(store, id)?.begun ?? Date.now() }], ...goInto(store, id)]);

/** The numbers of the day as they were frozen; empty before it began. @param {Log} log @param {string} run @returns {Record<string, number | string>} */
export const frozenValues = (log, run) => frozenIn(log.of(run).standing())?.values ?? {};

/** The numbers that a reading taken now is judged by: those of the day, or before it those of the plan. @param {Page} page */
export async function numbersNow({ store, log, plan }) {
  if (openRun(store)) return frozenValues(log, openRun(store));
  const { settings, day } = plan.compute(await loaded(plan));
  return { ...settings, ...day.values };
}

/** @param {Entry[]} standing */
export const frozenIn = (standing) => standing.find(({ kind }) => kind === "plan");

/** Year, month and day as the phone's clock has them. @param {Date} when */
export function dayName(when) {
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}`;
}
