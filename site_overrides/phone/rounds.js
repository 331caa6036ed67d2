// Lists that are gone through again and again in a day: each round has its own ticks, and all rounds stay.

import { watchWhileShown } from "./changing.js";
import { element } from "./element.js";
import { say } from "./words_said.js";
import { isSecondTap } from "./second_taps.js";

/** @typedef {import("./ticks.js").Page} Page */

/** @param {string} run @param {HTMLElement} list */
const key = (run, list) => `round/${run}/${list.dataset.list}`;

/** The round that is shown, from 1. @param {import("./store.js").Store} store @param {string} run @param {HTMLElement} list @returns {number} */
export const roundOf = (store, run, list) => store.get(key(run, list)) ?? 1;

/** What a round is called in the record; empty where a list is gone through once. @param {import("./store.js").Store} store @param {string} run @param {HTMLElement} list */
export function lotOf(store, run, list) {
  return list.dataset.repeats ? nameOf(list.dataset.repeats, roundOf(store, run, list)) : "";
}

/** @param {string} what @param {number} number */
export const nameOf = (what, number) => `${what} ${number}`.slice(0, 30);

/** @param {Page} page @param {HTMLElement} list */
export function mountRounds(page, list) {
  const what = list.dataset.repeats;
  const place = document.querySelector(`[data-rounds="${list.dataset.list}"]`);
  if (!what || !place) return;
  const [back, on] = [roundButton(-1), roundButton(1)];
  const now = element("strong", { class: "rounds__now", role: "status" });
  place.replaceChildren(back, now, on);

  /** @param {number} by */
  function roundButton(by) {
    const button = element("button", { type: "button", class: "button" });
    button.addEventListener("click", () => isSecondTap(button) || page.store.put(key(page.run(), list), roundOf(page.store, page.run(), list) + by));
    return button;
  }

  const paint = () => {
    const number = roundOf(page.store, page.run(), list);
    const done = page.log.of(page.run()).ticksOf(list.dataset.list ?? "", nameOf(what, number)).size;
    now.textContent = nameOf(what, number);
    back.textContent = number > 1 ? say("round_back", { round: nameOf(what, number - 1) }) : "";
    back.hidden = number <= 1;
    on.textContent = say(done ? "round_next" : "round_first", { round: nameOf(what, number + 1) });
    on.disabled = done === 0;
  };
  paint();
  watchWhileShown(page.store, list, paint, /^(log|state|run|round)\//);
}
