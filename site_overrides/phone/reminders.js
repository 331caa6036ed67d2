// What must not be forgotten, on every page: readings that are due, readings outside their limits about which nothing
// was done, and a record that has not left the phone.

import { unsent } from "./sending.js";
import { tooSlow } from "./foretelling.js";
import { due } from "./judging.js";
import { items, isOutside, makeTeller, tell, thingOf, titleOf } from "./log_words.js";
import { allRuns, dateOf, frozenValues, isPast, runOf } from "./runs.js";
import { clock, say, span } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page @typedef {import("./records.js").Entry} Entry */

const SOON = 120_000;
const LATEST_FIRST = 200;

/** What is due and what comes next. @param {Page} page */
export function dueNow(page) {
  const run = page.run();
  return runOf(page.store, run)?.ended ? [] : due(items, frozenValues(page.log, run), page.log.of(run).ends());
}

/** @param {{of: string, lot: string, name: string}} reading */
export const dueTitle = ({ of, lot, name }) => [titleOf(of), thingOf({ of, name }), lot && tell("lot", { lot })].filter(Boolean).join(", ");

/** Opens the sheet of a reading that is due. @param {Page} page @param {{of: string, lot: string, name: string}} reading */
export const openDue = async (page, { of, lot, name }) => (await import("./reading_sheet.js")).openReading(page, of, { ...(lot ? { lot } : {}), ...(name ? { name } : {}) });

/** Readings outside their limits, or that will not come there in time, that no action answers, the latest first. @param {Page} page */
export function unanswered(page) {
  const standing = page.log.of(page.run()).standing();
  const late = standing.filter(({ value, answers }) => value !== undefined || answers).slice(-LATEST_FIRST);
  const answered = new Set(late.flatMap(({ answers }) => answers ?? []));
  const slow = tooSlow(items, standing, frozenValues(page.log, page.run()));
  return late.filter((entry) => (isOutside(entry) || slow.has(entry.id)) && !answered.has(entry.id)).reverse();
}

/** @param {import("./log_words.js").Teller} teller @param {Entry} entry */
export function unansweredWords(teller, entry) {
  const title = [titleOf(entry.of ?? ""), thingOf(entry)].filter(Boolean).join(", ");
  return say(isOutside(entry) ? "outside" : "too_slow", { title, value: teller.written(entry) });
}

/** @param {Page} page */
export async function startReminding(page) {
  const teller = await makeTeller(page);
  /** @type {ReturnType<typeof dueNow>} */ let coming = [];
  let waiting = 0;

  function paintDue() {
    const now = Date.now();
    const soon = coming.filter(({ at }) => at <= now + SOON);
    page.strip.show("due", soon.length ? [dueRow(page, soon, now)] : []);
  }

  function look() {
    waiting = 0;
    coming = dueNow(page);
    paintDue();
    const open = runOf(page.store, page.run())?.ended ? [] : unanswered(page);
    page.strip.show("outside", open.length ? [outsideRow(page, teller, open)] : []);
    const [left] = leftBehind(page);
    page.strip.show("export", left ? [{ text: say("export_nag", { day: dateOf(left) }), button: say("export_send"), opens: "log/#exchange" }] : []);
  }

  // After the tap was answered, and once for many changes.
  const soon = () => void (waiting ||= window.setTimeout(look, 30));
  page.store.watch((_, keys) => void (keys.some((key) => /^(log|run|state|sent)\//.test(key)) && soon()));
  setInterval(paintDue, 1000);
  look();
}

/** @param {Page} page @param {ReturnType<typeof dueNow>} soon @param {number} now @returns {import("./bar.js").Row} */
function dueRow(page, soon, now) {
  const [first] = soon;
  const late = first.at <= now;
  const words = say(late ? "due_now" : "due_at", { title: dueTitle(first), time: clock(first.at) });
  return {
    text: soon.length > 1 ? say("due_more", { text: words, count: soon.length - 1 }) : words,
    left: late ? "" : span((first.at - now) / 1000),
    button: say("due_read"),
    buttonName: `${say("due_read")}: ${dueTitle(first)}`,
    act: () => openDue(page, first),
  };
}

/** @param {Page} page @param {import("./log_words.js").Teller} teller @param {Entry[]} open @returns {import("./bar.js").Row} */
function outsideRow(page, teller, open) {
  const words = unansweredWords(teller, open[0]);
  return {
    bad: true,
    text: open.length > 1 ? say("due_more", { text: words, count: open.length - 1 }) : words,
    button: say("outside_act"),
    act: async () => (await import("./reading_answer.js")).openOutside(page, teller, open[0]),
  };
}

/** Days that are over and whose record is only here. @param {Page} page */
function leftBehind(page) {
  return allRuns(page.store).filter(([id, run]) => (run.ended || isPast(id)) && unsent(page, id) > 0).map(([id]) => id);
}
