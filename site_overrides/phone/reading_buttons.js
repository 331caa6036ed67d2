// The readings of a station or a phase as large buttons, each with what was written down last, or comes to so far.

import { watchWhileShown } from "./changing.js";
import { once } from "./on_demand.js";
import { openRun } from "./runs.js";
import { moment } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page */

const fetchWords = once(() => Promise.all([import("./log_words.js"), import("./lots.js"), import("./reminders.js"), import("./records.js")]));

/** Nothing more is fetched before somebody has written something down. @param {Page} page @param {HTMLElement} place @param {HTMLElement[]} buttons */
export function paintReadings(page, place, buttons) {
  const paint = async () => {
    if (!page.log.of(page.run()).ends().length && !place.dataset.painted) return;
    place.dataset.painted = "true";
    const [words, { currentLot }, { unanswered }, { totals }] = await fetchWords();
    const teller = await words.makeTeller(page);
    const isOpen = Boolean(openRun(page.store));
    const index = page.log.of(page.run());
    const about = { index, sums: totals(index.standing()), alarming: new Set(isOpen ? unanswered(page).map(({ id }) => id) : []), isOpen };
    for (const button of buttons) paintButton(button, about, words, teller, isOpen ? currentLot(page) : undefined);
  };
  paint();
  watchWhileShown(page.store, place, paint, /^(log|state|run|lot|setting)\//);
}

/**
 * @param {HTMLElement} button @param {{index: import("./log.js").Index, sums: Record<string, number>, alarming: Set<string>, isOpen: boolean}} about
 * @param {typeof import("./log_words.js")} words @param {import("./log_words.js").Teller} teller @param {string} [lot]  every lot where none is given
 */
function paintButton(button, { index, sums, alarming, isOpen }, words, teller, lot) {
  const { items, isOutside, tell, thingOf, verdictOf } = words;
  const id = button.dataset.reading ?? "";
  const item = items[id];
  const among = item.per_lot && !item.adds_up ? lot : undefined;
  const entry = index.last(id, among);
  const last = /** @type {HTMLElement} */ (button.querySelector(".reading__last"));
  const told = (/** @type {import("./records.js").Entry} */ one) => {
    const value = id in sums ? tell("total", { value: teller.value(id, sums[id]) }) : [thingOf(one), teller.written(one) || "✓"].filter(Boolean).join(": ");
    return tell("last", { value, time: moment(one.at) });
  };
  const said = entry ? told(entry) : tell("never");
  if (last.textContent !== said) last.textContent = said;
  const grave = index.lasts(id, among).find((one) => isOutside(one) || alarming.has(one.id));
  button.dataset.verdict = !entry || !isOpen ? "none" : grave ? "high" : verdictOf(entry);
}
