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
    /** @type {HTMLElement | undefined} */
    let next;
    for (const stop of stops) if (!paintStop(store, plan, run(), stop) && !next) next = stop;
    paintNext(stops, run() ? next : undefined);
  };
  paint();
  watchWhileShown(store, stops[0], paint);
}

/**
 * Paints one stop; answers whether all of it is done.
 * @param {import("./store.js").Store} store @param {import("./plan_state.js").Plan} plan @param {string} run @param {HTMLElement} stop
 */
function paintStop(store, plan, run, stop) {
  const sometimes = Object.entries(JSON.parse(stop.dataset.sometimes ?? "{}"));
  const ticks = ticksOf(store, run, stop.dataset.procedure ?? "");
  const left = new Set(sometimes.filter(([, only]) => !stepApplies(plan, only)).map(([step]) => step));
  const all = Number(stop.dataset.steps) + sometimes.length - left.size;
  const done = Math.min(all, [...ticks.keys()].filter((step) => !left.has(step)).length);
  const complete = done === all;
  stop.classList.toggle("stop--done", complete);
  stop.classList.toggle("stop--begun", done > 0 && !complete);
  const words = /** @type {HTMLElement} */ (stop.querySelector("[data-progress]"));
  words.textContent = say(complete ? "stop_done" : "stop_done_of", { done, all });
  return complete;
}

/** Marks where work goes on, and leads there from the top of the page. @param {HTMLElement[]} stops @param {HTMLElement | undefined} next */
function paintNext(stops, next) {
  for (const stop of stops) stop.classList.toggle("stop--next", stop === next);
  const goOn = /** @type {HTMLAnchorElement | null} */ (document.querySelector("[data-go-on]"));
  if (!goOn) return;
  goOn.hidden = !next;
  if (!next) return;
  goOn.href = /** @type {HTMLAnchorElement} */ (next.querySelector("a")).href;
  goOn.textContent = say("go_on", { title: next.querySelector(".stop__title")?.textContent ?? "" });
}
