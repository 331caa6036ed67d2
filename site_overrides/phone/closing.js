// The end of the day: somebody signs, and from then on the record is only read and shared.

import { items, makeTeller, tell, titleOf } from "./log_words.js";
import { dueNow, dueTitle, unanswered, unansweredWords } from "./reminders.js";
import { endRun, runOf } from "./runs.js";
import { watchWhileShown } from "./ticks.js";
import { tidy } from "./typed_text.js";
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
    ...unended(page),
    ...due.map((reading) => tell("due_row", { title: dueTitle(reading), time: clock(reading.at) })),
    ...page.timers.all().map(([, { label, end }]) => say("timer_row", { label, time: clock(end) })),
  ];
  return open.length ? [tell("close_open"), ...open.map((words) => `• ${words}`), ""] : [];
}

/** What was begun and not ended, such as a lot that nobody released. @param {Page} page */
function unended(page) {
  const ends = page.log.of(page.run()).ends();
  const has = (/** @type {string} */ of, /** @type {string} */ lot) => ends.some((entry) => entry.of === of && (entry.lot ?? "") === lot);
  const pairs = Object.values(items).flatMap(({ since, until, per_lot }) => (since && until && per_lot ? [`${since} ${until[0]}`] : []));
  return [...new Set(pairs)].flatMap((pair) => {
    const [since, until] = pair.split(" ");
    const lots = new Set(ends.filter(({ of, lot }) => of === since && !has(until, lot ?? "")).map(({ lot }) => lot ?? ""));
    return [...lots].map((lot) => tell("close_lacks", { what: [titleOf(until), lot && tell("lot", { lot })].filter(Boolean).join(", ") }));
  });
}
