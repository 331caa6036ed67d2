// Rows that are ticked. Each tick is a fact of its own, named by run, list and step, never by position.

import { hide, watchWhileShown, write } from "./changing.js";
import { element } from "./element.js";
import { OPTIONS, stepApplies } from "./plan_state.js";
import { printOf as shortHash } from "./records.js";
import { lotOf, mountRounds } from "./rounds.js";
import { dayName, runToWriteTo, timeIn } from "./runs.js";
import { isSecondTap } from "./second_taps.js";
import { say } from "./words_said.js";

/**
 * @typedef {import("./store.js").Store} Store
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./runs.js").Page & {run: () => string}} Page
 * @typedef {Record<string, string>} Prints  what each step says, as a short mark
 */

/** @param {Page} page */
export function mountTicks(page) {
  for (const list of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-list]"))) {
    const rows = /** @type {HTMLElement[]} */ ([...list.children]);
    const prints = printsOf(rows);
    for (const row of rows) bind(row, () => change(page, list, row, prints));
    const paint = () => paintList(page, list, rows, prints);
    mountRounds(page, list);
    paint();
    watchWhileShown(page.store, list, paint, /^(log|state|run|round)\//, OPTIONS);
  }
}

/** Rows are named `step-<id>`. @param {HTMLElement} row */
const stepOf = (row) => row.id.slice("step-".length);

/** @param {HTMLElement} row */
const boxOf = (row) => /** @type {HTMLInputElement} */ (row.querySelector("input"));

/** A box is called by what is to be done; the key points are read after it, not as part of its name. @param {HTMLElement} row @param {() => void} act */
function bind(row, act) {
  const action = /** @type {HTMLElement} */ (row.querySelector(".step__action"));
  action.id = `does-${stepOf(row)}`;
  boxOf(row).setAttribute("aria-labelledby", action.id);
  boxOf(row).addEventListener("change", act);
}

/**
 * The tick is shown when it is on disk, not before; where that fails it is shown beside the words NOT SAVED.
 * @param {Page} page @param {HTMLElement} list @param {HTMLElement} row @param {Prints} now
 */
async function change(page, list, row, now) {
  const box = boxOf(row);
  const ticked = box.checked;
  box.checked = !ticked;
  if (isSecondTap(row)) return;
  const run = await runToWriteTo(page);
  if (!run) return;
  const [of, step, lot] = [list.dataset.list ?? "", stepOf(row), lotOf(page.store, run, list)];
  const index = page.log.of(run);
  const standing = index.ticks(of, lot, step);
  if (ticked === standing.length > 0) return;
  const back = standing.map(({ id }) => ({ kind: "tick", of, step, lot, corrects: id, gone: /** @type {true} */ (true) }));
  const prints = index.printsOf(of) ? [] : [{ kind: "list", of, prints: now }];
  page.log.addAll(run, ticked ? [...prints, { kind: "tick", of, step, lot }] : back);
}

/** What the rows say, as short marks that change with the words; numbers follow the plan and do not count. @param {HTMLElement[]} rows */
const printsOf = (rows) => Object.fromEntries(rows.map((row) => [stepOf(row), printOf(row)]));

/** @param {HTMLElement} row */
function printOf(row) {
  const words = /** @type {HTMLElement} */ (/** @type {HTMLElement} */ (row.querySelector(".step__words")).cloneNode(true));
  for (const other of words.querySelectorAll("[data-quantity], .step__time")) other.remove();
  return shortHash((words.textContent ?? "").replace(/\s+/g, " ").trim());
}

/** @param {Page} page @param {HTMLElement} list @param {HTMLElement[]} rows @param {Prints} now */
function paintList(page, list, rows, now) {
  const run = page.run();
  const index = page.log.of(run);
  const ticks = index.ticksOf(list.dataset.list ?? "", lotOf(page.store, run, list));
  const begun = index.printsOf(list.dataset.list ?? "");
  for (const row of rows) {
    const tick = ticks.get(stepOf(row));
    boxOf(row).checked = Boolean(tick);
    row.classList.toggle("step--done", Boolean(tick));
    row.classList.toggle("step--changed", Boolean(begun) && begun?.[stepOf(row)] !== now[stepOf(row)]);
    paintTime(row, tick?.at);
  }
  paintProgress(rows.filter((row) => stepApplies(page.plan, JSON.parse(row.dataset.only ?? "{}"))), ticks);
  paintChanged(begun, now);
}

/** @param {HTMLElement} row @param {number | undefined} at */
function paintTime(row, at) {
  const old = row.querySelector(".step__time");
  if (!at) return old?.remove();
  const words = say("ticked_at", { time: timeIn(dayName(new Date()), at) });
  if (!old) row.querySelector(".step__words")?.append(element("span", { class: "step__time" }, words));
  else write(old, words);
}

/** @param {HTMLElement[]} rows @param {Map<string, Entry>} ticks */
function paintProgress(rows, ticks) {
  const done = rows.filter((row) => ticks.has(stepOf(row))).length;
  const progress = document.querySelector("[data-list-progress]");
  if (progress) write(progress, say("done_of", { done, all: rows.length }));
}

/** @param {Prints | undefined} begun @param {Prints} now */
function paintChanged(begun, now) {
  const changed = /** @type {HTMLElement | null} */ (document.querySelector("[data-list-changed]"));
  if (!changed) return;
  const gone = Object.keys(begun ?? {}).filter((step) => !(step in now)).length;
  const other = begun ? Object.keys(now).filter((step) => begun[step] !== now[step]).length : 0;
  hide(changed, !gone && !other);
  write(changed, changed.hidden ? "" : say("list_changed", { other, gone }));
}
