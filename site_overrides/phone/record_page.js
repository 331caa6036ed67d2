// The record of a day to read and to print: the same parts as the report that is made from the file.

import { addressMark } from "./address_mark.js";
import { watchWhileShown } from "./changing.js";
import { plannedOf, tallyRows } from "./day_tallies.js";
import { element } from "./element.js";
import { entryTitle } from "./log_entries.js";
import { lists, farm } from "./log_content.js";
import { isOutside, items, makeTeller, tell, thingOf, timesOf, titleOf, verdictOf } from "./log_words.js";
import { clashes, clockOffsets, setBack } from "./merge.js";
import { clockOf, inOrder, phoneOf, standing, totals } from "./records.js";
import { loaded } from "./plan_state.js";
import { allRuns, dateOf, frozenIn, timeIn } from "./runs.js";
import { outgoing } from "./sending.js";
import { clock, span } from "./words_said.js";

/**
 * @typedef {import("./logging.js").Page} Page
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./log_words.js").Teller} Teller
 * @typedef {{teller: Teller, all: Entry[], standing: Entry[]}} Day
 */

/** @param {Page} page @param {HTMLElement} place */
export async function mountRecordPage(page, place) {
  const part = (/** @type {string} */ name) => /** @type {any} */ (place.querySelector(`[data-record-${name}]`));
  const days = allRuns(page.store);
  part("none").hidden = days.length > 0;
  part("ways").hidden = !days.length;
  part("print").addEventListener("click", () => print());
  if (!days.length) return;
  part("days").replaceChildren(...days.map(([id, { begun }]) => element("option", { value: id }, `${dateOf(id)}, ${timeIn(id, begun)}`)));
  const asked = addressMark();
  part("days").value = days.some(([id]) => id === asked) ? asked : page.run() || days[0][0];
  const [teller, formulas] = [await makeTeller(page), await loaded(page.plan)];
  const paint = () => part("shown").replaceChildren(...record(page, teller, formulas, part("days").value));
  part("days").addEventListener("change", paint);
  paint();
  let waiting = 0;
  watchWhileShown(page.store, place, () => void (waiting ||= window.setTimeout(() => {
    waiting = 0;
    paint();
  }, 200)));
}

/** @param {Page} page @param {Teller} teller @param {import("./plan_state.js").Formulas} formulas @param {string} run @returns {Node[]} */
function record(page, teller, formulas, run) {
  const all = outgoing(page, run);
  /** @type {Day} */ const day = { teller, all: inOrder(all), standing: standing(all) };
  const phones = [...new Set(day.all.map(phoneOf))];
  const ticked = day.standing.filter(({ kind }) => kind === "tick");
  const planned = plannedOf(formulas, frozenIn(day.standing)?.values);
  const head = { phones: phones.join(", "), count: day.all.length, ticks: ticked.length, plan: frozenIn(day.standing)?.text ?? "–" };
  return [
    element("h2", {}, tell("record_title", { farm, day: dateOf(run) })),
    element("p", { class: "quiet" }, tell("record_head", head)),
    ...section("record_tallies", ["record_what", "record_actual", "record_planned", "record_difference"], tallyRows(day.standing, planned, formulas, page.plan.system())),
    ...section("record_outside", ["record_time", "record_what", "record_value", "record_limit", "record_did"], outside(day)),
    ...section("record_counts", ["record_what", "record_sum"], sums(day)),
    ...section("record_times", ["record_time", "record_what", "record_who"], day.standing.filter(({ kind }) => kind === "mark").map((entry) => [timesOf(entry), named(entry), entry.who ?? ""])),
    ...section("record_readings", ["record_time", "record_what", "record_value", "record_limit", "record_verdict", "record_who"], readingRows(day)),
    ...section("record_remarks", ["record_time", "record_what", "record_who"], day.standing.filter(({ kind }) => kind === "remark" || kind === "sign").map((entry) => [timesOf(entry), [entry.kind === "sign" ? entryTitle(entry) : "", entry.text].filter(Boolean).join(" "), entry.who ?? ""])),
    ...section("record_changes", ["record_time", "record_what", "record_was", "record_now", "record_who"], changes(day)),
    ...section("record_lists", ["record_what", "record_done"], listRows(ticked)),
    ...section("record_timers", ["record_time", "record_what", "record_ends"], day.standing.filter(({ kind }) => kind === "timer").map((entry) => [clock(entry.at), entry.text ?? "", clock(entry.ends ?? 0)])),
    ...notes(day),
  ];
}

/** @param {string} title @param {string[]} heads @param {string[][]} rows */
function section(title, heads, rows) {
  if (!rows.length) return [];
  const head = element("thead", {}, element("tr", {}, ...heads.map((word) => element("th", { scope: "col" }, tell(word)))));
  const body = element("tbody", {}, ...rows.map((row) => element("tr", {}, ...row.map((cell) => element("td", {}, cell)))));
  const scroll = element("div", { class: "scroll", tabindex: "0", role: "group", "aria-label": tell(title) }, element("table", { class: "data record__table" }, head, body));
  return [element("h3", {}, tell(title)), scroll];
}

/** @param {Entry} entry */
const named = (entry) => [titleOf(entry.of ?? ""), thingOf(entry), entry.lot && tell("lot", { lot: entry.lot })].filter(Boolean).join(", ");

/** @param {Day} day */
function outside({ standing, teller }) {
  const actions = standing.filter(({ kind }) => kind === "action");
  const answered = new Set(actions.map(({ answers }) => answers));
  return standing.filter((entry) => isOutside(entry) || (entry.value !== undefined && answered.has(entry.id))).map((entry) => {
    const done = actions.filter(({ answers }) => answers === entry.id).map(({ text, at }) => `${clock(at)} ${text}`).join("; ");
    return [timesOf(entry), named(entry), `${teller.written(entry)}: ${tell(verdictOf(entry))}`, teller.limit(entry.of ?? "", entry.limit), done || tell("undone")];
  });
}

/** @param {Day} day */
const sums = ({ standing, teller }) => Object.entries(totals(standing)).map(([of, sum]) => [titleOf(of), teller.both(of, sum)]);

/** By what was read, then by time. @param {Day} day */
function readingRows({ standing, teller }) {
  const readings = standing.filter(({ kind }) => kind === "reading" || kind === "count");
  const place = (/** @type {Entry} */ { of }) => items[of ?? ""]?.order ?? Infinity;
  readings.sort((one, other) => place(one) - place(other) || 0);
  return readings.map((entry) => [
    timesOf(entry), named(entry), [teller.written(entry), entry.reason && items[entry.of ?? ""]?.reasons?.[entry.reason]].filter(Boolean).join(", "),
    teller.limit(entry.of ?? "", entry.limit), entry.kind === "count" ? "" : tell(verdictOf(entry)), entry.who ?? "",
  ]);
}

/** @param {Day} day */
function changes({ all, teller }) {
  const byId = new Map(all.map((entry) => [entry.id, entry]));
  return all.filter(({ corrects, kind }) => corrects && kind !== "tick" && kind !== "plan").map((entry) => {
    const old = byId.get(entry.corrects ?? "");
    const now = entry.gone ? tell("gone", { value: "" }).replace(/[: ]+$/, "") : teller.written(entry) || clock(entry.at);
    return [clock(clockOf(entry)), named(entry) || entryTitle(entry), old ? `${teller.written(old)} (${clock(old.at)})`.trim() : "", now, entry.who ?? ""];
  });
}

/** @param {Entry[]} ticked */
function listRows(ticked) {
  /** @type {Map<string, number>} */ const counts = new Map();
  for (const { of, lot } of ticked) {
    const title = [lists[of ?? ""] ?? of, lot].filter(Boolean).join(", ");
    counts.set(title, (counts.get(title) ?? 0) + 1);
  }
  return [...counts].map(([title, count]) => [title, String(count)]);
}

/** @param {Day} day */
function notes({ all, standing }) {
  const frozen = standing.filter(({ kind }) => kind === "plan");
  const differing = frozen.slice(1).map((plan) => ({ phone: phoneOf(plan), count: Object.entries(plan.values ?? {}).filter(([id, value]) => frozen[0].values?.[id] !== value).length }));
  const clash = clashes(all).length;
  const said = [
    ...standing.filter(({ kind }) => kind === "merge").map((entry) => `${clock(entry.at)} ${entryTitle(entry)} (${entry.who ?? tell("by_phone", { phone: phoneOf(entry) })})`),
    ...clockOffsets(all).map(({ phone, other, seconds }) => tell("exchange_clocks", { phone, other, time: span(Math.abs(seconds)) })),
    ...[...new Set(setBack(all).map(phoneOf))].map((phone) => tell("record_set_back", { phone })),
    ...differing.filter(({ count }) => count).map((parts) => tell("record_other_plan", parts)),
    ...(clash ? [tell("exchange_clash", { count: clash })] : []),
  ];
  if (!said.length) return [];
  return [element("h3", {}, tell("record_notes")), element("ul", {}, ...said.map((words) => element("li", {}, words)))];
}
