// One page of today's plan to print.

import { placesOfPeople } from "./people.js";
import { people } from "./plan_content.js";
import { follow, sayer, titleOf } from "./plan_words.js";
import { dateOf, openRun } from "./runs.js";

/** The date of the day that goes on; before it begins a phone knows of none, and it is written by hand. @param {import("./store.js").Store} store */
function dateOfDay(store) {
  const run = openRun(store);
  return run && dateOf(run);
}

/** @param {{store: import("./store.js").Store, plan: import("./plan_state.js").Plan}} page @param {HTMLElement} button */
export function mountSheet({ store, plan }, button) {
  const sheet = /** @type {HTMLElement} */ (button.closest(".sheet"));
  button.addEventListener("click", () => print());
  /** @type {HTMLElement} */ (sheet.querySelector("[data-sheet-date]")).textContent = dateOfDay(store);
  for (const table of /** @type {NodeListOf<HTMLElement>} */ (sheet.querySelectorAll("[data-sheet-crew]"))) {
    const names = placesOfPeople(store, table.dataset.sheetCrew ?? "", people);
    for (const cell of /** @type {NodeListOf<HTMLElement>} */ (table.querySelectorAll("[data-names-of]"))) {
      cell.textContent = (names.get(cell.dataset.namesOf ?? "") ?? []).join(", ");
    }
  }
  follow(plan, sheet, (formulas) => {
    const changes = Object.entries(plan.changes());
    const said = sayer(plan, formulas);
    const place = /** @type {HTMLElement} */ (sheet.querySelector("[data-sheet-changes]"));
    place.hidden = changes.length === 0;
    /** @type {HTMLElement} */ (place.querySelector("dl")).replaceChildren(...changes.map(([id, value]) => {
      const row = document.createElement("div");
      row.append(Object.assign(document.createElement("dt"), { textContent: titleOf(id) }), Object.assign(document.createElement("dd"), { textContent: said(id, value, "both") }));
      return row;
    }));
  });
}
