// The strip above the bar: what must be seen on every page, gravest first. Each page has a foot of its own to put it in.

import { hide, mark, write } from "./changing.js";
import { element } from "./element.js";
import { isSecondTap } from "./second_taps.js";
import { say } from "./words_said.js";

/**
 * @typedef {{text: string, left?: string, button?: string, buttonName?: string, act?: () => void, opens?: string, bad?: boolean}} Row  `opens` is a page below the site
 * @typedef {{show: (topic: string, rows: Row[]) => void, mount: () => void}} Strip
 */

const ORDER = ["unsaved", "ended", "outside", "stops", "timers", "clock", "awake", "due", "kept", "update", "keeping", "signal", "export"];
const MOST = 5;
const root = new URL("../", import.meta.url);

/** @param {import("./store.js").Store} store @returns {Strip} */
export function startStrip(store) {
  const strip = element("section", { class: "strip", "aria-label": say("strip"), hidden: "" });
  const mount = () => {
    const foot = document.querySelector(".foot");
    if (strip.parentElement !== foot) foot?.prepend(strip);
    foot?.classList.toggle("foot--strip", !strip.hidden);
  };
  /** @type {Map<string, Row[]>} */
  const topics = new Map();

  mount();

  /** @type {Strip["show"]} */
  function show(topic, rows) {
    topics.set(topic, rows);
    const all = ORDER.flatMap((name) => topics.get(name) ?? []).slice(0, MOST);
    const grows = all.length > strip.children.length;
    hide(strip, all.length === 0);
    while (strip.children.length > all.length) strip.lastElementChild?.remove();
    all.forEach((row, place) => paintRow(rowAt(strip, place), row));
    mount();
    if (grows) keepFocusInSight();
  }

  const watchSaving = () => {
    const rows = store.unsaved() || !store.isRead() ? [{ text: say("not_saved"), bad: true }] : [];
    if (Boolean(rows.length) !== Boolean(topics.get("unsaved")?.length)) show("unsaved", rows);
  };
  store.watch((key) => key === "" && watchSaving());
  if (!store.isRead()) watchSaving();
  return { show, mount };
}

/** What keys have led to must not come to lie under the strip. */
function keepFocusInSight() {
  document.querySelector(".md-main :focus-visible")?.scrollIntoView({ block: "nearest" });
}

/** Rows stay where they are and only their words change, so that a finger never misses. @param {HTMLElement} strip @param {number} place */
function rowAt(strip, place) {
  const there = strip.children[place];
  if (there) return /** @type {HTMLElement} */ (there);
  const button = element("button", { type: "button", class: "button button--small" });
  const link = element("a", { class: "button button--small", href: "#" });
  const row = element("div", { class: "strip__row" }, element("span"), element("span", { class: "left" }), button, link);
  strip.append(row);
  return row;
}

/** @param {HTMLElement} element @param {Row} row */
function paintRow(element, row) {
  const [text, left] = element.children;
  const button = /** @type {HTMLButtonElement} */ (element.children[2]);
  write(text, row.text);
  write(left, row.left ?? "");
  const link = /** @type {HTMLAnchorElement} */ (element.children[3]);
  for (const way of [button, link]) {
    write(way, row.button ?? "");
    hide(way, !row.button || (way === link) !== Boolean(row.opens));
    mark(way, "aria-label", row.buttonName ?? row.button ?? "");
  }
  if (row.opens) link.href = new URL(row.opens, root).href;
  button.onclick = () => void (isSecondTap(button) || row.act?.());
  element.classList.toggle("strip__row--bad", Boolean(row.bad));
}
