// Two views of a station's steps, made from those on the page: for whoever teaches, and for whoever learns them by heart.

import { element } from "./element.js";
import { piecesOf } from "./hiding.js";
import { instructions } from "./teaching.js";
import { tell } from "./teaching_words.js";
import { wear } from "./wearing.js";
import { filled } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page @typedef {{action: string, points: string[], guards: boolean}} Row */

/** @param {Page} page @param {HTMLElement} button */
export function openTeaching(page, button) {
  wear([new URL("../look/teaching.css", import.meta.url).href]); // so no station page pays for it before
  const place = /** @type {HTMLElement} */ (document.querySelector("[data-teach-view]"));
  const view = button.dataset.teach ?? "";
  const open = button.getAttribute("aria-expanded") === "true";
  for (const other of document.querySelectorAll("[data-teach]")) other.setAttribute("aria-expanded", String(other === button && !open));
  place.replaceChildren();
  if (open) return;
  const rows = rowsOfPage();
  if (view === "trainer") showTrainer(page, place, rows);
  else showLearner(place, rows);
  place.scrollIntoView({ block: "nearest" });
}

/** The steps of the page that belong to the plan. @returns {Row[]} */
function rowsOfPage() {
  const steps = /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(".steps .step, .actions .action"));
  return [...steps].filter((row) => !row.hidden).map((row) => ({
    action: row.querySelector(".step__action")?.textContent?.trim() ?? "",
    points: [...row.querySelectorAll(".point")].map((point) => point.textContent?.trim() ?? ""),
    guards: row.hasAttribute("data-guards"),
  }));
}

/** @param {Page} page @param {HTMLElement} place @param {Row[]} rows */
function showTrainer({ store }, place, rows) {
  const job = place.dataset.teachView ?? "";
  const parts = { title: titleOfPage(), needs: document.querySelectorAll(".needs li").length, steps: rows.length };
  for (const [name, part] of Object.entries(instructions)) {
    const list = element("ol", { class: "teach__points" });
    for (const [id, point] of Object.entries(part.points)) list.append(tickable(store, `teach/${job}/${name}/${id}`, filled(point, parts)));
    place.append(element("h3", {}, part.title), list);
    if (part.steps) place.append(stepsShown(rows));
  }
  const again = element("button", { type: "button", class: "button" }, tell("teach_again"));
  again.addEventListener("click", async () => {
    for (const [key] of store.entries(`teach/${job}/`)) await store.remove(key);
    for (const box of /** @type {NodeListOf<HTMLInputElement>} */ (place.querySelectorAll("input"))) box.checked = false;
  });
  place.append(again);
}

/** The job, without its number. */
function titleOfPage() {
  const title = /** @type {HTMLElement | undefined} */ (document.querySelector("h1")?.cloneNode(true));
  title?.querySelector(".badge")?.remove();
  return title?.textContent?.trim() ?? "";
}

/** @param {import("./store.js").Store} store @param {string} key @param {string} words */
function tickable(store, key, words) {
  const box = element("input", { type: "checkbox" });
  box.checked = Boolean(store.get(key));
  box.addEventListener("change", () => (box.checked ? store.put(key, { at: Date.now() }) : store.remove(key)));
  return element("li", {}, element("label", { class: "teach__tick" }, box, words));
}

/** @param {Row[]} rows */
function stepsShown(rows) {
  return element("ol", { class: "teach__steps" }, ...rows.map(({ action, points, guards }) => element("li", guards ? { class: "teach__step--guards" } : {},
    element("strong", {}, action), ...(guards ? [" ", element("em", {}, tell("teach_safety"))] : []), ...points.map((point) => element("span", { class: "point" }, point)))));
}

/** @param {HTMLElement} place @param {Row[]} rows */
function showLearner(place, rows) {
  let hidden = 0;
  const lines = rows.map(({ action }) => piecesOf(action));
  const most = Math.max(...lines.flatMap((pieces) => pieces.map(({ turn }) => turn)));
  const list = element("ol", { class: "learn" });
  const words = element("p", { class: "quiet", role: "status" });
  const hide = element("button", { type: "button", class: "button button--large", "data-hide": "" }, tell("learn_hide"));
  const show = element("button", { type: "button", class: "button", "data-show-all": "" }, tell("learn_show"));
  const paint = () => {
    list.replaceChildren(...lines.map((pieces) => element("li", {}, ...pieces.map((piece) => shownOrGap(piece, hidden)))));
    words.textContent = hidden >= most ? tell("learn_all_hidden") : tell("learn_help");
    hide.disabled = hidden >= most;
  };
  hide.addEventListener("click", () => {
    hidden += 1;
    paint();
  });
  show.addEventListener("click", () => {
    hidden = 0;
    paint();
  });
  place.append(words, list, element("div", { class: "row" }, hide, show));
  paint();
}

/** @param {import("./hiding.js").Piece} piece @param {number} hidden */
function shownOrGap({ text, word, turn }, hidden) {
  if (!word || turn > hidden) return text;
  const gap = element("button", { type: "button", class: "gap", "aria-label": tell("learn_gap") }, text);
  gap.addEventListener("click", () => gap.classList.toggle("gap--open"));
  return gap;
}
