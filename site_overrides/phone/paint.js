// Every number on the page follows the plan, within the frame in which it was changed.

import { hide, mark, write } from "./changing.js";
import { screenFirst } from "./screen_first.js";
import { fromSi, plainly, showing } from "./showing.js";
import { names, options, symbols } from "./words.js";
import { stepApplies } from "./plan_state.js";

export { loaded } from "./plan_state.js";

/**
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./plan_state.js").Outcome} Outcome
 * @typedef {import("./plan_state.js").System} System
 */

const NOTHING = "–";

/**
 * Shows values the way quantities are shown.
 * @param {import("./plan_state.js").Formulas} formulas
 */
export function shower({ measures, units, measureOf, digitsOf }) {
  const { show, showBoth } = showing(measures, units, symbols);
  /** @param {string} id @param {number | string} value @param {System} first @param {string} part */
  return (id, value, first, part) => {
    if (typeof value === "string") return part === "second" ? "" : names[value] ?? value;
    const digits = digitsOf[id] ?? null;
    if (part === "both") return showBoth(value, measureOf[id], first, digits);
    const one = show(value, measureOf[id], first, digits);
    if (part === "first") return one;
    const other = show(value, measureOf[id], first === "us" ? "metric" : "us", digits);
    return other === one ? "" : other;
  };
}

/**
 * Looks up once what the page has to paint. What it returns paints a changed plan.
 * @returns {(plan: Plan, outcome: Outcome) => void}
 */
export function painter() {
  const numbers = byQuantity(all("[data-quantity]"));
  const others = [timers(all("[data-timer]")), choices(all("[data-choice]")), rows(all("[data-only]")), alerts(all("[data-watch]"), all("[data-all-clear]")), changes(all("[data-changed-plan]"))];
  /** @type {Map<string, number | string | undefined>} what is shown of each quantity, so that what stays as it is costs nothing */ const shown = new Map();
  let system = "";
  const inTurn = screenFirst([...numbers.values()].flat().map(({ element }) => element));
  return (plan, outcome) => {
    const paint = numberPainter(plan, outcome);
    const { values } = outcome.day;
    if (system !== plan.system()) shown.clear();
    system = plan.system();
    for (const [id, places] of numbers) {
      if (shown.has(id) && shown.get(id) === values[id]) continue;
      shown.set(id, values[id]);
      for (const place of places) inTurn(place.element, () => paint(place));
    }
    for (const other of others) other(plan, outcome);
  };
}

/** Paints the numbers and choices of what is on no page yet. @param {HTMLElement} root @param {Plan} plan @param {Outcome} outcome */
export function paintAt(root, plan, outcome) {
  const paint = numberPainter(plan, outcome);
  for (const places of byQuantity(all("[data-quantity]", root)).values()) places.forEach(paint);
  choices(all("[data-choice]", root))(plan);
}

/** @param {string} name @param {ParentNode} [root] @returns {HTMLElement[]} */
const all = (name, root = document) => [.../** @type {NodeListOf<HTMLElement>} */ (root.querySelectorAll(name))];

/** @typedef {{element: HTMLElement, id: string, part: string, unit?: string}} Place  where a number stands, and how much of it */

/** @param {HTMLElement[]} elements */
function byQuantity(elements) {
  /** @type {Map<string, Place[]>} */ const groups = new Map();
  for (const element of elements) {
    const { quantity: id = "", unit, show: part = "both" } = element.dataset;
    if (!groups.has(id)) groups.set(id, []);
    groups.get(id)?.push({ element, id, part, unit });
  }
  return groups;
}

/** @param {Plan} plan @param {Outcome} outcome @returns {(place: Place) => void} */
function numberPainter(plan, { formulas, day }) {
  const show = shower(formulas);
  return ({ element, id, part, unit }) => {
    const value = day.values[id];
    if ((value === undefined) !== element.classList.contains("refused")) element.classList.toggle("refused");
    if (value === undefined) write(element, part === "second" ? "" : NOTHING);
    else write(element, unit ? plainly(fromSi(Number(value), formulas.units[unit])) : show(id, value, plan.system(), part));
  };
}

/** @param {HTMLElement[]} buttons */
const timers = (buttons) => (/** @type {Plan} */ _, /** @type {Outcome} */ { day }) => {
  for (const button of /** @type {HTMLButtonElement[]} */ (buttons)) {
    const seconds = day.values[button.dataset.timer ?? ""];
    mark(button, "data-seconds", String(seconds ?? ""));
    button.disabled = seconds === undefined;
  }
};

/** @param {HTMLElement[]} elements */
const choices = (elements) => (/** @type {Plan} */ plan) => {
  for (const element of elements) {
    const choice = element.dataset.choice ?? "";
    write(element, options[choice][plan.option(choice)]);
  }
};

/** @param {HTMLElement[]} elements */
function rows(elements) {
  const kept = elements.map((row) => ({ row, only: JSON.parse(row.dataset.only ?? "{}") }));
  return (/** @type {Plan} */ plan) => kept.forEach(({ row, only }) => hide(row, !stepApplies(plan, only)));
}

/** Stops and warnings; all of them are in the page, here it is decided which are shown. @param {HTMLElement[]} watches @param {HTMLElement[]} clear */
const alerts = (watches, clear) => (/** @type {Plan} */ _, /** @type {Outcome} */ { day }) => {
  const holding = new Set(day.alerts);
  for (const element of watches) hide(element, !holding.has(element.dataset.watch ?? ""));
  for (const element of clear) hide(element, holding.size > 0);
};

/** @param {HTMLElement[]} elements */
const changes = (elements) => (/** @type {Plan} */ plan) => elements.forEach((element) => hide(element, Object.keys(plan.changes()).length === 0));
