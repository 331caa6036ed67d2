// The log: who writes, what is due, what can be read, what was written down, and the end of the day.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { keepRemark } from "./keeping_entries.js";
import { mountCurves } from "./log_curves.js";
import { paintEntries } from "./log_entries.js";
import { mountClosing } from "./closing.js";
import { makeTeller, tell } from "./log_words.js";
import { mountWriter } from "./log_writer.js";
import { dueNow, dueTitle, openDue } from "./reminders.js";
import { dateOf, frozenIn, runOf, timeIn } from "./runs.js";
import { tidy } from "./typed_text.js";
import { clock } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page */

const FIRST = 30;

/** @param {Page} page @param {HTMLElement} place */
export async function mountLogPage(page, place) {
  const part = (/** @type {string} */ name) => /** @type {any} */ (place.querySelector(`[data-log-${name}]`));
  mountWriter(page, part("who"), part("lot"));
  mountFolds(page, place);
  mountRemark(page, part("remark"), part("remark-kept"));
  mountClosing(page, part("close"));
  const teller = await makeTeller(page);
  let shown = FIRST;
  part("more").addEventListener("click", () => {
    shown += 100;
    paint();
  });

  function paint() {
    paintDay(page, part);
    paintDue(page, part("due"));
    part("more").hidden = !paintEntries(page, teller, part("entries"), shown);
    paintTimers(page, part);
  }

  let waiting = 0;
  const soon = () => void (waiting ||= window.setTimeout(() => {
    waiting = 0;
    if (place.isConnected) paint();
  }, 30));
  paint();
  watchWhileShown(page.store, place, soon, /^(log|state|run|lot|timer|setting)\//);
  const clockwork = setInterval(() => (place.isConnected ? paintDue(page, part("due")) : clearInterval(clockwork)), 10_000);
  mountCurves(page, teller, part("curves"));
}

/** @param {Page} page @param {(name: string) => any} part */
function paintDay(page, part) {
  const run = runOf(page.store, page.run());
  const index = page.log.of(page.run());
  const parts = run && {
    day: dateOf(page.run()), time: timeIn(page.run(), run.ended ?? run.begun), plan: frozenIn(index.standing())?.text ?? "–", phone: page.log.phone(), count: index.all().length,
  };
  part("day").textContent = parts ? tell(run?.ended ? "run_ended" : "run_begun", parts) : tell("run_none");
}

/** Which parts of the day are folded away is remembered. @param {Page} page @param {HTMLElement} place */
function mountFolds({ store }, place) {
  for (const fold of /** @type {NodeListOf<HTMLDetailsElement>} */ (place.querySelectorAll("[data-log-phase]"))) {
    const key = `setting/folded/${fold.dataset.logPhase}`;
    fold.open = !store.get(key);
    fold.addEventListener("toggle", () => fold.open === Boolean(store.get(key)) && store.put(key, !fold.open));
  }
}

/** @param {Page} page @param {HTMLElement} place */
function paintDue(page, place) {
  const rows = dueNow(page).slice(0, 6).map((reading) => {
    const button = element("button", { type: "button", class: "due", ...(reading.at <= Date.now() ? { "data-late": "" } : {}) }, tell("due_row", { title: dueTitle(reading), time: clock(reading.at) }));
    button.addEventListener("click", () => openDue(page, reading));
    return button;
  });
  place.replaceChildren(...(rows.length ? rows : [element("p", { class: "quiet" }, tell("due_none"))]));
}

/** @param {Page} page @param {(name: string) => any} part */
function paintTimers({ timers }, part) {
  const rows = timers.all().map(([key, timer]) => {
    const stop = element("button", { type: "button", class: "button button--small" }, "×");
    stop.setAttribute("aria-label", `${tell("cancel")}: ${timer.label}`);
    stop.addEventListener("click", () => timers.stop(key));
    return element("li", {}, element("a", { href: timer.address }, timer.label), element("strong", {}, clock(timer.end)), stop);
  });
  part("no-timers").hidden = rows.length > 0;
  part("timers").replaceChildren(...rows);
}

/** @param {Page} page @param {HTMLFormElement} form @param {HTMLElement} words */
function mountRemark(page, form, words) {
  const field = /** @type {HTMLTextAreaElement} */ (form.querySelector("textarea"));
  /** @type {HTMLButtonElement} */ (form.querySelector("button")).disabled = false; // what is tapped before anyone listens would be lost
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const typed = field.value;
    const text = tidy(typed, 500);
    if (!text) return field.focus();
    words.textContent = ""; // what was said of the last remark is not said of this one
    const kept = await keepRemark(page, text);
    if (!kept) return;
    words.textContent = kept.saved ? tell("kept_at", { time: clock(kept.entry.at) }) : tell("not_saved");
    words.className = kept.saved ? "" : "sheet__unsaved";
    if (kept.saved && field.value === typed) field.value = ""; // more may have been typed meanwhile
  });
}
