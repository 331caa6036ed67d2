// The readings of a station or a phase as large buttons, each with what was written down last.

import { watchWhileShown } from "./ticks.js";
import { clock } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page */

/** Nothing more is fetched before somebody taps, or has written something down. @param {Page} page @param {HTMLElement} place */
export function mountReadingButtons(page, place) {
  const buttons = /** @type {HTMLElement[]} */ ([...place.querySelectorAll("[data-reading]")]);
  for (const button of buttons) {
    button.addEventListener("click", async () => (await import("./reading_sheet.js")).openReading(page, button.dataset.reading ?? ""));
  }
  const paint = async () => {
    const index = page.log.of(page.run());
    if (!index.ends().length && !place.dataset.painted) return;
    place.dataset.painted = "true";
    const [words, { currentLot }] = await Promise.all([import("./log_words.js"), import("./lots.js")]);
    const teller = await words.makeTeller(page);
    for (const button of buttons) paintButton(button, page.log.of(page.run()), words, teller, currentLot(page));
  };
  paint();
  watchWhileShown(page.store, place, paint);
}

/**
 * @param {HTMLElement} button @param {import("./log.js").Index} index @param {typeof import("./log_words.js")} words
 * @param {import("./log_words.js").Teller} teller @param {string} lot
 */
function paintButton(button, index, { items, tell, verdictOf }, teller, lot) {
  const id = button.dataset.reading ?? "";
  const entry = index.last(id, items[id].per_lot ? lot : undefined);
  const last = /** @type {HTMLElement} */ (button.querySelector(".reading__last"));
  const said = entry ? tell("last", { value: teller.written(entry) || "✓", time: clock(entry.at) }) : tell("never");
  if (last.textContent !== said) last.textContent = said;
  button.dataset.verdict = entry ? verdictOf(entry) : "none";
}
