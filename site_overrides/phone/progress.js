// How far each station is, on the front page.

import { hide, watchWhileShown, write } from "./changing.js";
import { nameOf } from "./rounds.js";
import { say } from "./words_said.js";
import { OPTIONS, stepApplies } from "./plan_state.js";

/** @param {import("./ticks.js").Page} page */
export function mountProgress(page) {
  const stops = /** @type {HTMLElement[]} */ ([...document.querySelectorAll("[data-procedure]")]);
  if (!stops.length) return;
  const paint = () => {
    const complete = new Set(stops.filter((stop) => paintStop(page, stop)));
    paintNext(stops, page.run() ? whereWorkIs(page, stops, complete) : undefined);
  };
  paint();
  watchWhileShown(page.store, stops[0], paint, /^(log|state|run)\//, OPTIONS);
}

/**
 * Where work goes on: at the station that was ticked last or, where that is done, at the first after it that is not. Before the first
 * tick of a day that is at the first that is not left to days before. Nobody is sent to what is done only when needed.
 * @param {import("./ticks.js").Page} page @param {HTMLElement[]} stops @param {Set<HTMLElement>} complete
 */
function whereWorkIs({ log, run }, stops, complete) {
  const index = log.of(run());
  const times = stops.map(({ dataset: { procedure: list = "" } }) =>
    Math.max(0, ...[...index.roundsOf(list)].flatMap((lot) => [...index.ticksOf(list, lot).values()].map(({ at }) => at))));
  const latest = Math.max(...times);
  const from = latest ? times.indexOf(latest) : stops.findIndex((stop) => !("ahead" in stop.dataset));
  const isMeant = (/** @type {HTMLElement} */ stop) => !("whenNeeded" in stop.dataset) || (latest > 0 && stop === stops[from]);
  return stops.slice(Math.max(0, from)).find((stop) => !complete.has(stop) && isMeant(stop));
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
  const far = complete ? "stop_done" : done || !("whenNeeded" in stop.dataset) ? "stop_done_of" : "stop_when_needed";
  write(words, `${what && round > 1 ? `${nameOf(what, round)}: ` : ""}${say(far, { done, all })}`);
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
