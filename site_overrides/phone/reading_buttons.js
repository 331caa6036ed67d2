// The readings of a station or a phase as large buttons, each with what was written down last.

import { element } from "./element.js";
import { items, makeTeller, tell, verdictOf } from "./log_words.js";
import { currentLot } from "./lots.js";
import { watchWhileShown } from "./ticks.js";
import { clock } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page */

/** @param {Page} page @param {HTMLElement} place  its `data-readings` has the ids */
export async function mountReadingButtons(page, place) {
  const ids = (place.dataset.readings ?? "").split(" ").filter((id) => Object.hasOwn(items, id));
  const buttons = ids.map((id) => {
    const title = element("span", { class: "reading__title" }, items[id].title);
    const last = element("span", { class: "reading__last" });
    const button = element("button", { type: "button", class: "reading", "data-reading": id }, title, last);
    button.addEventListener("click", async () => (await import("./reading_sheet.js")).openReading(page, id));
    return /** @type {const} */ ([id, button, last]);
  });
  place.replaceChildren(...buttons.map(([, button]) => button));
  const teller = await makeTeller(page);
  const paint = () => {
    const index = page.log.of(page.run());
    for (const [id, button, last] of buttons) {
      const entry = index.last(id, items[id].per_lot ? currentLot(page) : undefined);
      const words = entry ? tell("last", { value: teller.written(entry) || "✓", time: clock(entry.at) }) : tell("never");
      if (last.textContent !== words) last.textContent = words;
      button.dataset.verdict = entry ? verdictOf(entry) : "none";
    }
  };
  paint();
  watchWhileShown(page.store, place, paint);
}
