// Every number on the page follows the plan, within the frame in which it was changed.

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
const NEAR = "50%";
const LATER = 60;

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
 * Looks up once what the page has to paint. What it returns paints a changed plan: at once what is on the screen, and
 * when nothing more is asked for what is folded away or a long way off, for that is most of a long page.
 * @returns {(plan: Plan, outcome: Outcome) => void}
 */
export function painter() {
  const numbers = byQuantity(all("[data-quantity]"));
  const others = [timers(all("[data-timer]")), choices(all("[data-choice]")), rows(all("[data-only]")), alerts(all("[data-watch]"), all("[data-all-clear]")), changes(all("[data-changed-plan]"))];
  /** @type {Map<string, string>} what is shown of each quantity, so that what stays as it is costs nothing */ const shown = new Map();
  const isFar = watchFar([...numbers.values()].flat());
  /** @type {Set<HTMLElement>} */ const left = new Set();
  let waiting = 0;
  return (plan, outcome) => {
    const paint = numberPainter(plan, outcome);
    for (const [id, elements] of numbers) {
      const what = `${plan.system()} ${outcome.day.values[id]}`;
      if (shown.get(id) === what) continue;
      shown.set(id, what);
      for (const element of elements) isFar(element) ? left.add(element) : paint(element);
    }
    for (const other of others) other(plan, outcome);
    clearTimeout(waiting);
    if (left.size) waiting = window.setTimeout(() => {
      left.forEach(paint);
      left.clear();
    }, LATER);
  };
}

/** Whether an element is neither on the screen nor near it; until the browser has told, none is. @param {HTMLElement[]} elements */
function watchFar(elements) {
  const far = new Set();
  const watcher = new IntersectionObserver((seen) => {
    for (const { target, isIntersecting } of seen) isIntersecting ? far.delete(target) : far.add(target);
  }, { rootMargin: NEAR });
  for (const element of elements) watcher.observe(element);
  return (/** @type {HTMLElement} */ element) => far.has(element);
}

/** @param {string} name @returns {HTMLElement[]} */
const all = (name) => [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(name))];

/** @param {HTMLElement[]} elements */
function byQuantity(elements) {
  /** @type {Map<string, HTMLElement[]>} */ const groups = new Map();
  for (const element of elements) {
    const id = element.dataset.quantity ?? "";
    groups.set(id, [...(groups.get(id) ?? []), element]);
  }
  return groups;
}

/** @param {Plan} plan @param {Outcome} outcome @returns {(element: HTMLElement) => void} */
function numberPainter(plan, { formulas, day }) {
  const show = shower(formulas);
  return (element) => {
    const { quantity: id = "", unit, show: part = "both" } = element.dataset;
    const value = day.values[id];
    element.classList.toggle("refused", value === undefined);
    if (value === undefined) write(element, part === "second" ? "" : NOTHING);
    else write(element, unit ? plainly(fromSi(Number(value), formulas.units[unit])) : show(id, value, plan.system(), part));
  };
}

/** Changes the text that is there: another in its place is more work for the browser. @param {HTMLElement} element @param {string} words */
function write(element, words) {
  const text = element.firstChild;
  if (!(text instanceof Text) || text.nextSibling) element.textContent = words;
  else if (text.data !== words) text.data = words;
}

/** @param {HTMLElement[]} buttons */
const timers = (buttons) => (/** @type {Plan} */ _, /** @type {Outcome} */ { day }) => {
  for (const button of /** @type {HTMLButtonElement[]} */ (buttons)) {
    const seconds = day.values[button.dataset.timer ?? ""];
    button.dataset.seconds = String(seconds ?? "");
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

/** @param {HTMLElement} element @param {boolean} hidden */
function hide(element, hidden) {
  if (element.hidden !== hidden) element.hidden = hidden;
}
