// The end of the day: somebody signs, and from then on the record is only read and shared.

import { watchWhileShown } from "./changing.js";
import { items, makeTeller, tell, titleOf } from "./log_words.js";
import { dueNow, dueTitle, unanswered, unansweredWords } from "./reminders.js";
import { endRun, runOf } from "./runs.js";
import { tidy } from "./typed_text.js";
import { unended } from "./unended.js";
import { clock, say } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page */

/** @param {Page} page @param {HTMLFormElement} form */
export function mountClosing(page, form) {
  const field = /** @type {HTMLInputElement} */ (form.querySelector("input"));
  field.value ||= page.log.who(); // a name may have been typed before anyone listened
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const who = tidy(field.value, 60);
    if (!who) return field.focus();
    if (!confirm([...(await openThings(page)), tell("close_ask")].join("\n"))) return;
    const { saved } = await page.log.add(page.run(), { kind: "sign", who, text: tell("closed") });
    if (saved) endRun(page.store, page.run());
  });
  const paint = () => {
    const run = runOf(page.store, page.run());
    for (const part of form.elements) /** @type {HTMLInputElement} */ (part).disabled = !run || Boolean(run.ended);
  };
  paint();
  watchWhileShown(page.store, form, paint, /^(state|run)\//);
}

/** What the day leaves open, gravest first, under a head; nothing where nothing is. @param {Page} page @returns {Promise<string[]>} */
async function openThings(page) {
  const teller = await makeTeller(page);
  const due = dueNow(page).filter(({ at }) => at <= Date.now());
  const open = [
    ...unanswered(page).map((entry) => unansweredWords(teller, entry)),
    ...unended(items, page.log.of(page.run()).ends()).map(lackingWords),
    ...due.map((reading) => tell("due_row", { title: dueTitle(reading), time: clock(reading.at) })),
    ...page.timers.all().map(([, { label, end }]) => say("timer_row", { label, time: clock(end) })),
  ];
  return open.length ? [tell("close_open"), ...open.map((words) => `• ${words}`), ""] : [];
}

/** @param {import("./unended.js").Lacking} lacking */
const lackingWords = ({ of, lot }) => tell("close_lacks", { what: [titleOf(of), lot && tell("lot", { lot })].filter(Boolean).join(", ") });
