// The readings of a station or a phase as large buttons, each with what was written down last.

import { once } from "./on_demand.js";
import { watchWhileShown } from "./ticks.js";
import { clock } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page */

const fetchSheet = once(() => import("./reading_sheet.js"));
const fetchWords = once(() => Promise.all([import("./log_words.js"), import("./lots.js")]));
const QUIET = 1500;

/** Nothing more is fetched before somebody taps, or has written something down. @param {Page} page @param {HTMLElement} place */
export function mountReadingButtons(page, place) {
  const buttons = /** @type {HTMLElement[]} */ ([...place.querySelectorAll("[data-reading]")]);
  for (const button of buttons) {
    button.addEventListener("click", async () => (await fetchSheet()).openReading(page, button.dataset.reading ?? ""));
  }
  const paint = async () => {
    const index = page.log.of(page.run());
    if (!index.ends().length && !place.dataset.painted) return;
    place.dataset.painted = "true";
    const [words, { currentLot }] = await fetchWords();
    const teller = await words.makeTeller(page);
    for (const button of buttons) paintButton(button, page.log.of(page.run()), words, teller, currentLot(page));
  };
  paint();
  if (page.run()) setTimeout(fetchSheet, QUIET); // on a working day the first reading is not kept waiting
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
  const said = entry ? tell("last", { value: teller.written(entry) || "✓", time: clock(entry.at) }) : tell("never");
  if (last.textContent !== said) last.textContent = said;
  button.dataset.verdict = entry ? verdictOf(entry) : "none";
}
