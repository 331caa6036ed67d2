// How far each station is, on the front page.

import { ticksOf } from "./runs.js";
import { say } from "./words_said.js";
import { watchWhileShown } from "./ticks.js";
import { stepApplies } from "./plan_state.js";

/** @param {{store: import("./store.js").Store, plan: import("./plan_state.js").Plan, run: () => string}} page */
export function mountProgress({ store, plan, run }) {
  const stops = /** @type {HTMLElement[]} */ ([...document.querySelectorAll("[data-procedure]")]);
  if (!stops.length) return;
  const paint = () => {
    let next = true;
    for (const stop of stops) next = paintStop(store, plan, run(), stop, next) && next;
  };
  paint();
  watchWhileShown(store, stops[0], paint);
}

/**
 * Paints one stop. Answers whether all up to it is done, so that the next one is where work goes on.
 * @param {import("./store.js").Store} store @param {import("./plan_state.js").Plan} plan @param {string} run
 * @param {HTMLElement} stop @param {boolean} allBefore
 */
function paintStop(store, plan, run, stop, allBefore) {
  const steps = Object.entries(JSON.parse(stop.dataset.steps ?? "{}")).filter(([, only]) => stepApplies(plan, only));
  const ticks = ticksOf(store, run, stop.dataset.procedure ?? "");
  const done = steps.filter(([step]) => ticks.has(step)).length;
  const complete = done === steps.length;
  stop.classList.toggle("stop--done", complete);
  stop.classList.toggle("stop--begun", done > 0 && !complete);
  stop.classList.toggle("stop--next", allBefore && !complete && run !== "");
  const words = /** @type {HTMLElement} */ (stop.querySelector("[data-progress]"));
  words.textContent = say(complete ? "stop_done" : "stop_done_of", { done, all: steps.length });
  return complete;
}
