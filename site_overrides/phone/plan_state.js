// The plan as it is changed on this phone. Formulas are fetched only when something is changed: the pages
// come with the numbers of the farm's own plan.

import { chosen } from "./words.js";

/**
 * @typedef {number | string} Value
 * @typedef {{values: Record<string, Value>, refused: Record<string, {sentence: string, input?: string, because?: string}>, alerts: string[]}} Day
 * @typedef {{settings: Record<string, Value>, defaults: Record<string, Value>, day: Day, formulas: any}} Computed
 * @typedef {object} Plan
 * @property {() => Record<string, Value>} changes
 * @property {() => "us" | "metric" | ""} units  the system chosen on this phone; empty for the farm's own
 * @property {(id: string) => Value | undefined} chosen  the option of a choice
 * @property {() => Promise<Computed>} compute
 * @property {() => boolean} differs  whether pages show anything but the farm's plan in the farm's units
 * @property {(id: string, value: Value | undefined) => Promise<boolean>} set
 * @property {(system: string) => Promise<boolean>} setUnits
 * @property {(listener: () => void) => () => void} watch
 */

const PREFIX = "plan/today/";
const UNITS = "setting/units";

/** @param {import("./store.js").Store} store @returns {Plan} */
export function openPlan(store) {
  const changes = () => Object.fromEntries(store.entries(PREFIX).map(([key, value]) => [key.slice(PREFIX.length), value]));
  const units = () => store.get(UNITS) ?? "";
  return {
    changes,
    units,
    chosen: (id) => store.get(PREFIX + id) ?? chosen[id],
    differs: () => store.entries(PREFIX).length > 0 || units() !== "",
    set: (id, value) => (value === undefined ? store.remove(PREFIX + id) : store.put(PREFIX + id, value)),
    setUnits: (system) => store.put(UNITS, system),
    watch: (listener) => store.watch((key) => (key.startsWith(PREFIX) || key === UNITS) && listener()),
    compute: () => compute(changes()),
  };
}

/** @param {Record<string, Value>} changes @returns {Promise<Computed>} */
async function compute(changes) {
  const formulas = await import("./formulas.js");
  const usable = Object.fromEntries(Object.entries(changes).filter(([id, value]) => isUsable(formulas, id, value)));
  const choices = Object.fromEntries(Object.entries(usable).filter(([id]) => id in formulas.choices));
  const settings = formulas.settle(usable);
  return { settings, defaults: formulas.settle(choices), day: formulas.compute(settings), formulas };
}

/** Whether a kept change still means something: content may have changed since. @param {any} formulas @param {string} id @param {Value} value */
function isUsable(formulas, id, value) {
  if (id in formulas.choices) return value in formulas.choices[id].options;
  const input = formulas.inputs[id];
  return Boolean(input) && typeof value === "number" && value >= input.low && value <= input.high;
}

/** Whether the plan has one of the options that a step is only for. @param {Plan} plan @param {Record<string, string[]>} only */
export function stepApplies(plan, only) {
  return Object.entries(only).every(([choice, options]) => options.includes(String(plan.chosen(choice))));
}
