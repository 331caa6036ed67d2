// The readings of a station or a phase as large buttons, each with what was written down last.

import { once } from "./on_demand.js";
import { openRun } from "./runs.js";
import { watchWhileShown } from "./ticks.js";
import { moment } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page */

const fetchWords = once(() => Promise.all([import("./log_words.js"), import("./lots.js")]));

/** Nothing more is fetched before somebody has written something down. @param {Page} page @param {HTMLElement} place @param {HTMLElement[]} buttons */
export function paintReadings(page, place, buttons) {
  const paint = async () => {
    const index = page.log.of(openRun(page.store));
    if (!index.ends().length && !place.dataset.painted) return;
    place.dataset.painted = "true";
    const [words, { currentLot }] = await fetchWords();
    const teller = await words.makeTeller(page);
    for (const button of buttons) paintButton(button, page.log.of(openRun(page.store)), words, teller, currentLot(page));
  };
  paint();
  watchWhileShown(page.store, place, paint, /^(log|state|run|lot|setting)\//);
}

/**
 * @param {HTMLElement} button @param {import("./log.js").Index} index @param {typeof import("./log_words.js")} words
 * @param {import("./log_words.js").Teller} teller @param {string} lot
 */
function paintButton(button, index, { items, tell, verdictOf }, teller, lot) {
  const id = button.dataset.reading ?? "";
  const entry = index.last(id, items[id].per_lot ? lot : undefined);
  const last = /** @type {HTMLElement} */ (button.querySelector(".reading__last"));
  const said = entry ? tell("last", { value: teller.written(entry) || "✓", time: moment(entry.at) }) : tell("never");
  if (last.textContent !== said) last.textContent = said;
  button.dataset.verdict = entry ? verdictOf(entry) : "none";
}
