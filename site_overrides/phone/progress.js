// How far each station is, on the front page.

import { hide, write } from "./changing.js";
import { nameOf } from "./rounds.js";
import { say } from "./words_said.js";
import { watchWhileShown } from "./ticks.js";
import { OPTIONS, stepApplies } from "./plan_state.js";

/** @param {import("./ticks.js").Page} page */
export function mountProgress(page) {
  const stops = /** @type {HTMLElement[]} */ ([...document.querySelectorAll("[data-procedure]")]);
  if (!stops.length) return;
  const paint = () => {
    /** @type {HTMLElement | undefined} */
    let next;
    for (const stop of stops) if (!paintStop(page, stop) && !next) next = stop;
    paintNext(stops, page.run() ? next : undefined);
  };
  paint();
  watchWhileShown(page.store, stops[0], paint, /^(log|state|run)\//, OPTIONS);
}

/**
 * Paints one stop; answers whether all of it is done. Of a list that is gone through again and again the last round counts.
 * @param {import("./ticks.js").Page} page @param {HTMLElement} stop
 */
function paintStop({ plan, log, run }, stop) {
  const sometimes = Object.entries(JSON.parse(stop.dataset.sometimes ?? "{}"));
  const [list, what] = [stop.dataset.procedure ?? "", stop.dataset.repeats];
  const index = log.of(run());
  const round = Math.max(1, ...(what ? [...index.roundsOf(list)].map((lot) => Number(lot.slice(what.length + 1)) || 0) : []));
  const ticks = index.ticksOf(list, what ? nameOf(what, round) : "");
  const left = new Set(sometimes.filter(([, only]) => !stepApplies(plan, only)).map(([step]) => step));
  const all = Number(stop.dataset.steps) + sometimes.length - left.size;
  const done = Math.min(all, [...ticks.keys()].filter((step) => !left.has(step)).length);
  const complete = done === all;
  stop.classList.toggle("stop--done", complete);
  stop.classList.toggle("stop--begun", done > 0 && !complete);
  const words = /** @type {HTMLElement} */ (stop.querySelector("[data-progress]"));
  write(words, `${what && round > 1 ? `${nameOf(what, round)}: ` : ""}${say(complete ? "stop_done" : "stop_done_of", { done, all })}`);
  return complete;
}

/** Marks where work goes on, and leads there from the top of the page. @param {HTMLElement[]} stops @param {HTMLElement | undefined} next */
function paintNext(stops, next) {
  for (const stop of stops) stop.classList.toggle("stop--next", stop === next);
  const goOn = /** @type {HTMLAnchorElement | null} */ (document.querySelector("[data-go-on]"));
  if (!goOn) return;
  hide(goOn, !next);
  if (!next) return;
  goOn.href = /** @type {HTMLAnchorElement} */ (next.querySelector("a")).href;
  write(goOn, say("go_on", { title: next.querySelector(".stop__title")?.textContent ?? "" }));
}
