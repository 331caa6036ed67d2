// The day that is going on, and those before it.

import { element } from "./element.js";
import { allRuns, beginRun, dayName, runOf } from "./runs.js";
import { clock, date, say } from "./words_said.js";
import { watchWhileShown } from "./ticks.js";

/** @param {{store: import("./store.js").Store, run: () => string}} page */
export function mountRuns({ store, run }) {
  const button = /** @type {HTMLButtonElement | null} */ (document.querySelector("[data-new-run]"));
  if (!button) return;
  button.addEventListener("click", () => {
    if (!run() || confirm(say("run_confirm"))) beginRun(store);
  });
  const paint = () => paintDays(store, run());
  paint();
  watchWhileShown(store, button, paint);
}

/** @param {import("./store.js").Store} store @param {string} current */
function paintDays(store, current) {
  const run = runOf(store, current);
  const words = /** @type {HTMLElement} */ (document.querySelector("[data-run-words]"));
  words.textContent = run ? say("run_begun", { day: date(run.begun), time: clock(run.begun) }) : say("run_none");
  const stale = /** @type {HTMLElement | null} */ (document.querySelector("[data-run-stale]"));
  if (stale) {
    stale.hidden = !run || dayName(new Date(run.begun)) === dayName(new Date());
    stale.textContent = stale.hidden || !run ? "" : say("run_stale", { day: date(run.begun) });
  }
  const old = allRuns(store).filter(([id]) => id !== current);
  /** @type {HTMLElement} */ (document.querySelector("[data-old-runs]")).hidden = old.length === 0;
  /** @type {HTMLElement} */ (document.querySelector("[data-old-run-list]")).replaceChildren(...old.map(([id, { begun }]) => {
    const ticks = store.entries(`tick/${id}/`).length;
    return element("li", {}, say("run_old", { day: date(begun), time: clock(begun), ticks }));
  }));
}
