// The day that is going on, and those before it.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { allRuns, beginRun, dateOf, dayName, goOnWith, runOf, runToWriteTo, timeIn } from "./runs.js";
import { say } from "./words_said.js";

/** @typedef {import("./ticks.js").Page} Page */

/** @param {Page} page */
export function mountRuns(page) {
  const button = /** @type {HTMLButtonElement | null} */ (document.querySelector("[data-new-run]"));
  if (!button) return;
  button.addEventListener("click", () => {
    const run = runOf(page.store, page.run());
    if (!run) runToWriteTo(page);
    else if (run.ended || confirm(say("run_confirm"))) beginRun(page);
  });
  const paint = () => paintDays(page);
  paint();
  watchWhileShown(page.store, button, paint, /^(log|state|run)\//);
}

/** @param {Page} page */
function paintDays(page) {
  const { store, log } = page;
  const run = runOf(store, page.run());
  const words = /** @type {HTMLElement} */ (document.querySelector("[data-run-words]"));
  words.textContent = run ? say(run.ended ? "run_ended" : "run_begun", { day: dateOf(page.run()), time: timeIn(page.run(), run.ended ?? run.begun) }) : say("run_none");
  const old = allRuns(store).filter(([id]) => id !== page.run());
  /** @type {HTMLElement} */ (document.querySelector("[data-old-runs]")).hidden = old.length === 0;
  const list = /** @type {HTMLElement} */ (document.querySelector("[data-old-run-list]"));
  list.replaceChildren(...old.map(([id, { begun }]) => {
    const counts = { entries: log.of(id).all().length, ticks: log.of(id).standing().filter(({ kind }) => kind === "tick").length };
    const look = element("a", { href: `${list.dataset.recordsAt}#${id}`, class: "button button--small" }, say("run_look"));
    const row = element("li", {}, element("p", {}, say("run_old", { day: dateOf(id), time: timeIn(id, begun), ...counts })), look);
    if (id.startsWith(dayName(new Date()))) row.append(" ", goOn(page, id));
    return row;
  }));
}

/** @param {Page} page @param {string} id */
function goOn({ store }, id) {
  const button = element("button", { type: "button", class: "button button--small" }, say("run_go_on"));
  button.addEventListener("click", () => goOnWith(store, id));
  return button;
}
