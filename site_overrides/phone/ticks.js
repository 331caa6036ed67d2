// Rows that are ticked. Each tick is a fact of its own, named by run, list and step, never by position.

import { beginRun, ticksOf } from "./runs.js";
import { clock, say } from "./words_said.js";

/** @typedef {import("./store.js").Store} Store */

/** @param {{store: Store, run: () => string}} page */
export function mountTicks({ store, run }) {
  for (const list of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-list]"))) {
    const rows = /** @type {HTMLElement[]} */ ([...list.querySelectorAll("[data-step]")].filter((row) => row.tagName === "LI"));
    const name = list.dataset.list ?? "";
    for (const row of rows) boxOf(row).addEventListener("change", () => change(store, run(), name, row, rows));
    const paint = () => paintList(store, run(), name, rows);
    paint();
    watchWhileShown(store, list, paint);
  }
}

/** @param {HTMLElement} row */
const boxOf = (row) => /** @type {HTMLInputElement} */ (row.querySelector("input"));

/** @param {Store} store @param {HTMLElement} element @param {() => void} paint */
export function watchWhileShown(store, element, paint) {
  const stop = store.watch(() => (element.isConnected ? paint() : stop()));
}

/** @param {Store} store @param {string} run @param {string} list @param {HTMLElement} row @param {HTMLElement[]} rows */
async function change(store, run, list, row, rows) {
  const ticked = boxOf(row).checked;
  const id = run || await beginRun(store);
  const key = `tick/${id}/${list}/${row.dataset.step}`;
  if (!ticked) return store.remove(key);
  if (!store.get(`list/${id}/${list}`)) store.put(`list/${id}/${list}`, printsOf(rows));
  navigator.storage?.persist?.().catch(() => false);
  return store.put(key, { at: Date.now() });
}

/** @param {HTMLElement[]} rows */
const printsOf = (rows) => Object.fromEntries(rows.map((row) => [row.dataset.step, row.dataset.print ?? ""]));

/** @param {Store} store @param {string} run @param {string} list @param {HTMLElement[]} rows */
function paintList(store, run, list, rows) {
  const ticks = ticksOf(store, run, list);
  const begun = store.get(`list/${run}/${list}`);
  for (const row of rows) {
    const tick = ticks.get(row.dataset.step ?? "");
    boxOf(row).checked = Boolean(tick);
    row.classList.toggle("step--done", Boolean(tick));
    row.classList.toggle("step--changed", Boolean(begun) && begun[row.dataset.step ?? ""] !== (row.dataset.print ?? ""));
    const time = row.querySelector("[data-time]");
    if (time) time.textContent = tick ? say("ticked_at", { time: clock(tick.at) }) : "";
  }
  paintHead(rows, begun);
}

/** @param {HTMLElement[]} rows @param {Record<string, string> | undefined} begun */
function paintHead(rows, begun) {
  const shown = rows.filter((row) => !row.hidden);
  const done = shown.filter((row) => boxOf(row).checked).length;
  const progress = document.querySelector("[data-list-progress]");
  if (progress) progress.textContent = say("done_of", { done, all: shown.length });
  const changed = /** @type {HTMLElement | null} */ (document.querySelector("[data-list-changed]"));
  if (!changed) return;
  const now = printsOf(rows);
  const gone = Object.keys(begun ?? {}).filter((step) => !(step in now)).length;
  const other = begun ? Object.keys(now).filter((step) => begun[step] !== now[step]).length : 0;
  changed.hidden = !gone && !other;
  changed.textContent = changed.hidden ? "" : say("list_changed", { other, gone });
}
