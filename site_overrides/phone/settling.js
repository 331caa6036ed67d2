/**
 * Settles a plan, as `generator/computing/settling.py` does.
 *
 * @typedef {Record<string, number | string>} Settings SI values, and options by choice
 * @typedef {{low: number, high: number, step: number | null, whole: boolean, default: number}} Input
 * @typedef {{default: string, options: Record<string, Record<string, number>>}} Choice
 */

import { liesWithin } from "./ranges.js";

/**
 * Settings from a plan and changes to it. A change beats the plan, the plan beats an option, an option a default. When
 * a change picks another option than the plan has, what that choice brings beats the plan. Changes that no longer fit,
 * as an older copy of the site may have kept them, are left out.
 * @param {{inputs: Record<string, Input>, constants: Record<string, number>, choices: Record<string, Choice>}} givens
 * @param {Settings} plan @param {Settings} changes
 */
export function settleOn(givens, plan, changes) {
  const fitting = onlyFitting(givens, changes);
  const options = Object.keys(givens.choices).map((name) => fitting[name]).join();
  if (kept?.givens !== givens.inputs || kept.plan !== plan || kept.options !== options) {
    kept = { givens: givens.inputs, plan, options, settings: unchanged(givens, plan, fitting) };
  }
  return { ...kept.settings, ...fitting };
}

/** The last settings without changed inputs: from one change to the next they are the same. @type {{givens: unknown, plan: Settings, options: string, settings: Settings} | undefined} */
let kept;

/**
 * Settings with the options that are picked, but no input changed.
 * @param {Parameters<typeof settleOn>[0]} givens @param {Settings} plan @param {Settings} picked
 */
function unchanged(givens, plan, picked) {
  /** @type {Settings} */ const settings = {};
  /** @type {Record<string, number>} */ const brought = {};
  const overruled = new Set();
  for (const [name, choice] of Object.entries(givens.choices)) {
    const planned = plan[name] ?? choice.default;
    settings[name] = picked[name] ?? planned;
    Object.assign(brought, choice.options[settings[name]]);
    if (settings[name] === planned) continue;
    for (const values of Object.values(choice.options)) Object.keys(values).forEach((id) => overruled.add(id));
  }
  const defaults = Object.entries(givens.inputs).map(([name, input]) => [name, input.default]);
  for (const [name, value] of [...defaults, ...Object.entries(givens.constants)]) {
    const planned = overruled.has(name) ? undefined : plan[name];
    settings[name] = planned ?? brought[name] ?? value;
  }
  return { ...settings }; // browsers copy in no time what is itself a copy, but not what was filled entry by entry
}

/** @param {{inputs: Record<string, Input>, choices: Record<string, Choice>}} givens @param {Settings} changes */
function onlyFitting({ inputs, choices }, changes) {
  return Object.fromEntries(
    Object.entries(changes).filter(([name, value]) => {
      if (Object.hasOwn(choices, name)) return Object.hasOwn(choices[name].options, value);
      return Object.hasOwn(inputs, name) && isInRange(inputs[name], value);
    }),
  );
}

/** Whether an input takes a value. @param {Input} input @param {unknown} value */
export function isInRange({ low, high, whole }, value) {
  return typeof value === "number" && liesWithin(value, [low, high]) && (!whole || Number.isInteger(value));
}
