// The plan as it is changed on this phone. Formulas are fetched only when something is changed: pages come with
// the numbers of the farm's own plan.

import { chosen, first } from "./words.js";

/**
 * @typedef {number | string} Value
 * @typedef {"us" | "metric"} System
 * @typedef {import("./running.js").Refusal} Refusal
 * @typedef {{values: Record<string, Value>, refused: Record<string, Refusal>, alerts: string[]}} Day
 * @typedef {typeof import("./formulas.js")} Formulas
 * @typedef {object} Outcome
 * @property {Formulas} formulas
 * @property {Record<string, Value>} settings
 * @property {Record<string, Value>} defaults  what each input is without its own change, but with the options chosen
 * @property {Day} day
 * @typedef {object} Plan
 * @property {() => Record<string, Value>} changes
 * @property {() => System} system  the units that stand first
 * @property {(id: string) => string} option  the option of a choice
 * @property {() => boolean} differs  whether pages must show anything but the farm's plan in the farm's units
 * @property {() => Promise<Formulas>} load
 * @property {(formulas: Formulas) => Outcome} compute
 * @property {(formulas: Formulas) => Promise<void>} prepare  computes a little at a time, so that the first change finds most of it done
 * @property {(id: string, value: Value | undefined) => Promise<boolean>} set  nothing takes the change back
 * @property {(values: Record<string, Value | undefined>) => Promise<boolean>} setAll  all of them or none
 * @property {(system: string) => Promise<boolean>} setSystem
 * @property {(listener: () => void) => () => void} watch
 */

const PREFIX = "plan/today/";
const SYSTEM = "setting/units";

/** Keys of choices: lists of steps depend on these, whatever numbers the plan has. */
export const OPTIONS = new RegExp(`^${PREFIX}(${Object.keys(chosen).join("|")})$`);

/** @param {import("./store.js").Store} store @returns {Plan} */
export function openPlan(store) {
  const changes = () => Object.fromEntries(store.entries(PREFIX).map(([key, value]) => [key.slice(PREFIX.length), value]));
  const system = () => store.get(SYSTEM) ?? first;
  /** @type {Outcome | undefined} */ let outcome;
  let stale = true;
  const isOfPlan = (/** @type {string} */ key) => key.startsWith(PREFIX);
  // Listens before any part of a page does.
  store.watch((_, keys) => void (stale ||= keys.some(isOfPlan)));
  // Many parts of a page ask within the same frame; the day is computed once for all of them.
  const computed = (/** @type {Formulas} */ formulas) => {
    if (!outcome || stale) outcome = compute(formulas, changes(), outcome?.day);
    stale = false;
    return outcome;
  };
  // A change in between leaves the plan stale; whoever asks in between has it computed at once.
  const prepare = async (/** @type {Formulas} */ formulas) => {
    if (outcome) return;
    stale = false;
    const [changed, settings] = [changes(), formulas.settle(changes())];
    const day = await formulas.computeInPieces(settings);
    outcome ??= outcomeOf(formulas, changed, settings, day);
  };
  return {
    changes,
    system,
    option: (id) => String(store.get(PREFIX + id) ?? chosen[id]),
    differs: () => store.entries(PREFIX).length > 0 || system() !== first,
    load: () => import("./formulas.js"),
    compute: computed,
    prepare,
    set: (id, value) => store.put(PREFIX + id, value),
    setAll: (values) => store.keep(Object.entries(values).map(([id, value]) => [PREFIX + id, value])),
    setSystem: (chosenSystem) => store.put(SYSTEM, chosenSystem),
    watch: (listener) => store.watch((_, keys) => keys.some((key) => key === SYSTEM || isOfPlan(key)) && listener()),
  };
}

/** @type {Formulas | undefined} */
let formulasKept;

/** The formulas; asked for once, there at once from then on. @param {Plan} plan */
export async function loaded(plan) {
  return (formulasKept ??= await plan.load());
}

/** @param {Formulas} formulas @param {Record<string, Value>} changes @param {Day} [before] @returns {Outcome} */
function compute(formulas, changes, before) {
  const settings = formulas.settle(changes);
  return outcomeOf(formulas, changes, settings, formulas.compute(settings, before));
}

/** @param {Formulas} formulas @param {Record<string, Value>} changes @param {Record<string, Value>} settings @param {Day} day @returns {Outcome} */
function outcomeOf(formulas, changes, settings, day) {
  /** @type {Record<string, Value> | undefined} */ let defaults;
  return {
    formulas,
    settings,
    get defaults() {
      return (defaults ??= formulas.settle(Object.fromEntries(Object.entries(changes).filter(([id]) => id in formulas.choices))));
    },
    day,
  };
}

/** Whether the plan has one of the options that a step is only for. @param {Plan} plan @param {Record<string, string[]>} only */
export function stepApplies(plan, only) {
  return Object.entries(only).every(([choice, options]) => options.includes(plan.option(choice)));
}
