// Computes only what a few results need, for curves and searches that ask hundreds of times.

import { computeOn } from "./running.js";

/**
 * @typedef {import("./plan_state.js").Formulas} Formulas
 * @typedef {import("./plan_state.js").Value} Value
 */

/** @type {WeakMap<Formulas["steps"], Map<string, ReturnType<typeof lookUp>>>} */
const lookedUp = new WeakMap();

/**
 * The results that some ids need, themselves included, in order.
 * @param {Formulas} formulas @param {string[]} ids
 */
export function neededFor(formulas, ids) {
  const found = lookedUp.get(formulas.steps) ?? new Map();
  lookedUp.set(formulas.steps, found);
  if (!found.has(ids.join())) found.set(ids.join(), lookUp(formulas, ids));
  return /** @type {ReturnType<typeof lookUp>} */ (found.get(ids.join()));
}

/** @param {Formulas} formulas @param {string[]} ids */
function lookUp({ steps, uses }, ids) {
  const needed = new Set(ids);
  const open = [...ids];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    for (const other of uses[id] ?? []) {
      if (needed.has(other)) continue;
      needed.add(other);
      open.push(other);
    }
  }
  return { needed, steps: Object.fromEntries(Object.entries(steps).filter(([id]) => needed.has(id))) };
}

/**
 * A function that gives one result while one input takes other values; undefined where the result is refused.
 * @param {Formulas} formulas @param {Record<string, Value>} settings @param {string} input @param {string} result
 * @returns {(value: number) => number | undefined}
 */
export function along(formulas, settings, input, result) {
  const ask = asking(formulas, settings, input, [result]);
  return (value) => ask(value)[result];
}

/**
 * The same for several results at once.
 * @param {Formulas} formulas @param {Record<string, Value>} settings @param {string} input @param {string[]} results
 * @returns {(value: number) => Record<string, any>}
 */
export function asking(formulas, settings, input, results) {
  const { steps } = neededFor(formulas, results);
  const fixed = fixedAlong(formulas, settings, input, steps);
  return (value) => computeOn({ steps: fixed.steps, uses: formulas.uses, watches: {} }, { ...fixed.settings, [input]: value }).values;
}

/** What does not depend on the input is computed once. @param {Formulas} formulas @param {Record<string, Value>} settings @param {string} input @param {Formulas["steps"]} steps */
function fixedAlong(formulas, settings, input, steps) {
  const moving = new Set([input]);
  for (const id of Object.keys(steps)) if (formulas.uses[id].some((/** @type {string} */ other) => moving.has(other))) moving.add(id);
  const still = Object.fromEntries(Object.entries(steps).filter(([id]) => !moving.has(id)));
  const { values, refused } = computeOn({ steps: still, uses: formulas.uses, watches: {} }, settings);
  // A result that is refused whatever the input is stays among the steps, so that it takes along those that use it.
  const left = Object.entries(steps).filter(([id]) => moving.has(id) || id in refused);
  return { settings: { ...values }, steps: Object.fromEntries(left) }; // a copy, for that is copied again in no time
}
