// Ways in: what has been gone through is kept on the phone, and shown where the paths are listed.

import { known } from "./boxes.js";
import { watchWhileShown } from "./changing.js";
import { questionsOf } from "./drills_page.js";
import { paths } from "./teaching.js";
import { tell } from "./teaching_words.js";

/** @typedef {import("./logging.js").Page} Page */

/** @param {string} path @param {string} leg */
const keyOf = (path, leg) => `path/${path}/${leg}`;

/** How many legs of a path are done. @param {import("./store.js").Store} store @param {string} path */
const doneOf = (store, path) => Object.keys(paths[path].legs).filter((leg) => store.get(keyOf(path, leg))).length;

/** @param {Page} page @param {HTMLElement} place */
export function mountPath({ store }, place) {
  const path = place.dataset.path ?? "";
  const boxes = /** @type {NodeListOf<HTMLInputElement>} */ (place.querySelectorAll("[data-leg]"));
  for (const box of boxes) {
    const key = keyOf(path, box.dataset.leg ?? "");
    box.addEventListener("change", () => (box.checked ? store.put(key, { at: Date.now() }) : store.remove(key)));
    box.disabled = false; // what is tapped before anyone listens would be lost
  }
  const paint = () => {
    for (const box of boxes) box.checked = Boolean(store.get(keyOf(path, box.dataset.leg ?? "")));
    const done = doneOf(store, path);
    /** @type {HTMLElement} */ (place.querySelector("[data-path-progress]")).textContent = tell("path_done", { done, all: boxes.length });
    /** @type {HTMLElement} */ (place.querySelector("[data-path-whole]")).hidden = done < boxes.length;
    for (const link of /** @type {NodeListOf<HTMLElement>} */ (place.querySelectorAll("[data-drills-known]"))) {
      const deck = questionsOf(`${path}.${link.dataset.drillsKnown}`);
      link.textContent = tell("drill_known", { known: known(deck, (id) => store.get(`drill/${id}`)), all: deck.length });
    }
  };
  paint();
  watchWhileShown(store, place, paint);
}

/** @param {Page} page @param {HTMLElement} list */
export function mountPaths({ store }, list) {
  const paint = () => {
    for (const words of /** @type {NodeListOf<HTMLElement>} */ (list.querySelectorAll("[data-path-of]"))) {
      const path = words.dataset.pathOf ?? "";
      const [done, all] = [doneOf(store, path), Object.keys(paths[path].legs).length];
      words.textContent = done ? tell("path_done", { done, all }) : "";
    }
  };
  paint();
  watchWhileShown(store, list, paint);
}
