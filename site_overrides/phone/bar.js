// The strip above the bar: what must be seen on every page, gravest first.

import { element } from "./element.js";
import { say } from "./words_said.js";

/**
 * @typedef {{text: string, left?: string, button?: string, act?: () => void, bad?: boolean}} Row
 * @typedef {{show: (topic: string, rows: Row[]) => void}} Strip
 */

const ORDER = ["unsaved", "timers", "awake", "update", "keeping"];
const MOST = 4;

/** @param {import("./store.js").Store} store @returns {Strip} */
export function startStrip(store) {
  const strip = element("div", { class: "strip", hidden: "" });
  document.body.append(strip);
  /** @type {Map<string, Row[]>} */
  const topics = new Map();

  /** @type {Strip["show"]} */
  function show(topic, rows) {
    topics.set(topic, rows);
    const all = ORDER.flatMap((name) => topics.get(name) ?? []).slice(0, MOST);
    strip.hidden = all.length === 0;
    while (strip.children.length > all.length) strip.lastElementChild?.remove();
    all.forEach((row, place) => paintRow(rowAt(strip, place), row));
  }

  const watchSaving = () => {
    const rows = store.unsaved() ? [{ text: say("not_saved"), bad: true }] : [];
    if (Boolean(rows.length) !== Boolean(topics.get("unsaved")?.length)) show("unsaved", rows);
  };
  store.watch((key) => key === "" && watchSaving());
  return { show };
}

/** Rows stay where they are and only their words change, so that a finger never misses. @param {HTMLElement} strip @param {number} place */
function rowAt(strip, place) {
  const there = strip.children[place];
  if (there) return /** @type {HTMLElement} */ (there);
  const button = element("button", { type: "button", class: "button button--small" });
  const row = element("div", { class: "strip__row" }, element("span"), element("span", { class: "left" }), button);
  strip.append(row);
  return row;
}

/** @param {HTMLElement} element @param {Row} row */
function paintRow(element, row) {
  const [text, left] = element.children;
  const button = /** @type {HTMLButtonElement} */ (element.children[2]);
  if (text.textContent !== row.text) text.textContent = row.text;
  left.textContent = row.left ?? "";
  button.textContent = row.button ?? "";
  button.hidden = !row.button;
  button.onclick = row.act ?? null;
  element.classList.toggle("strip__row--bad", Boolean(row.bad));
}
