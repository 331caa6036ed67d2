// The page of questions: a deck is chosen, one question after the other is asked, answers are explained.

import { addressMark } from "./address_mark.js";
import { answered, known, next } from "./boxes.js";
import { drills } from "./drills.js";
import { drillTable } from "./drill_table.js";
import { askIn } from "./drill_card.js";
import { loaded } from "./plan_state.js";
import { pose } from "./posing.js";
import { paths } from "./teaching.js";
import { tell } from "./teaching_words.js";

/** @typedef {import("./logging.js").Page} Page */

const CARD = "drill/";
const OF = "of-";

/** The questions of a deck: of a path or one leg of it (`path`, `path.leg`), of a procedure (`of-id`), or all. @param {string} deck @returns {string[]} */
export function questionsOf(deck) {
  const all = Object.keys(drills);
  if (deck.startsWith(OF)) return all.filter((id) => drills[id].procedure === deck.slice(OF.length));
  const [path, leg] = deck.split(".");
  if (!Object.hasOwn(paths, path)) return all;
  const legs = paths[path].legs;
  return leg ? legs[leg] ?? all : [...new Set(Object.values(legs).flat())];
}

/** @param {Page} page @param {HTMLElement} place */
export async function mountDrills(page, place) {
  const choice = /** @type {HTMLSelectElement} */ (place.querySelector("[data-deck]"));
  const formulas = await loaded(page.plan);
  let last = "";
  const cardOf = (/** @type {string} */ id) => page.store.get(CARD + id);

  function ask() {
    const deck = questionsOf(choice.value);
    part(place, "[data-drill-progress]").textContent = tell("drill_known", { known: known(deck, cardOf), all: deck.length });
    const table = drillTable(page.plan, formulas, Math.random);
    const refused = new Set();
    for (;;) {
      const id = next(deck.filter((each) => !refused.has(each)), cardOf, Date.now(), last);
      const posed = id && pose(drills[id], formulas, table);
      if (id && !posed) refused.add(id);
      else return id && posed ? show(id, posed) : rest(deck);
    }
  }

  /** @param {string} id @param {import("./posing.js").Posed} posed */
  function show(id, posed) {
    last = id;
    const done = (/** @type {boolean} */ right) => void page.store.put(CARD + id, answered(cardOf(id), right, Date.now()));
    askIn(part(place, "[data-drill-card]"), { drill: drills[id], posed, root: place.dataset.root ?? "", done, onward });
  }

  /** What comes in the place of a question stands where that did. */
  function onward() {
    ask();
    const first = /** @type {HTMLElement} */ (part(place, "[data-drill-card]").firstElementChild);
    first.tabIndex = -1;
    first.focus({ preventScroll: true });
    first.scrollIntoView();
  }

  /** Nothing is due: more can be asked all the same. @param {string[]} deck */
  function rest(deck) {
    const card = part(place, "[data-drill-card]");
    const again = Object.assign(document.createElement("button"), { type: "button", className: "button", textContent: tell("drill_again") });
    again.addEventListener("click", async () => {
      for (const id of deck) await page.store.remove(CARD + id);
      onward();
    });
    card.replaceChildren(Object.assign(document.createElement("p"), { className: "all-clear", textContent: tell("drill_rest") }), again);
  }

  choose(choice, addressMark());
  choice.addEventListener("change", ask);
  ask();
}

/** @param {HTMLSelectElement} choice @param {string} deck */
function choose(choice, deck) {
  if (!deck) return;
  if (![...choice.options].some(({ value }) => value === deck)) {
    const [path] = deck.split(".");
    const title = paths[path]?.title ?? drills[questionsOf(deck)[0]]?.title ?? "";
    if (!title || (!deck.startsWith(OF) && !paths[path])) return;
    choice.add(new Option(title, deck));
  }
  choice.value = deck;
}

/** @param {HTMLElement} inside @param {string} which */
const part = (inside, which) => /** @type {HTMLElement} */ (inside.querySelector(which));
