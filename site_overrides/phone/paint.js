// Every number on the page follows the plan, within the frame in which it was changed.

import { fromSi, plainly, showing } from "./showing.js";
import { names, options, symbols } from "./words.js";
import { stepApplies } from "./plan_state.js";
import { paintAlerts } from "./alerts.js";

export { loaded } from "./plan_state.js";

/**
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./plan_state.js").Outcome} Outcome
 * @typedef {import("./plan_state.js").System} System
 */

const NOTHING = "–";

/** @type {WeakMap<Element, string>} what elements show, so that what stays as it is costs nothing */
const painted = new WeakMap();

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

/** @param {Plan} plan @param {Outcome} outcome */
export function paintAll(plan, outcome) {
  const { formulas, day } = outcome;
  const show = shower(formulas);
  const system = plan.system();
  for (const element of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-quantity]"))) {
    const id = element.dataset.quantity ?? "";
    const value = day.values[id];
    const what = `${system} ${value}`;
    if (painted.get(element) === what) continue;
    painted.set(element, what);
    element.classList.toggle("refused", value === undefined);
    if (value === undefined) element.textContent = element.dataset.show === "second" ? "" : NOTHING;
    else if (element.dataset.unit) element.textContent = plainly(fromSi(Number(value), formulas.units[element.dataset.unit]));
    else element.textContent = show(id, value, system, element.dataset.show ?? "both");
  }
  for (const button of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-timer]"))) {
    const seconds = day.values[button.dataset.timer ?? ""];
    button.dataset.seconds = String(seconds ?? "");
    /** @type {HTMLButtonElement} */ (button).disabled = seconds === undefined;
  }
  paintChoices(plan);
  paintAlerts(day);
}

/** @param {Plan} plan */
function paintChoices(plan) {
  for (const element of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-choice]"))) {
    const choice = element.dataset.choice ?? "";
    element.textContent = options[choice][plan.option(choice)];
  }
  for (const row of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-only]"))) {
    row.hidden = !stepApplies(plan, JSON.parse(row.dataset.only ?? "{}"));
  }
  const changed = /** @type {HTMLElement | null} */ (document.querySelector("[data-changed-plan]"));
  if (changed) changed.hidden = Object.keys(plan.changes()).length === 0;
}
