/**
 * Settles a plan and computes its day, as `generator/computing/settling.py` and `running.py` do.
 *
 * @typedef {Record<string, number | string>} Settings SI values, and options by choice
 * @typedef {{low: number, high: number, step: number | null, whole: boolean, default: number}} Input
 * @typedef {{default: string, options: Record<string, Record<string, number>>}} Choice
 * @typedef {{sentence: string, input: string | null, because: string | null}} Refusal `sentence` is a key of words
 * @typedef {{that: (v: Settings) => boolean, input: string | null}} Condition
 * @typedef {{formula: (v: Settings) => number | string, require: Condition[]}} Step
 * @typedef {{values: Settings, refused: Record<string, Refusal>, alerts: string[]}} Day
 */

import { NotANumber } from "./runtime.js";

const SLACK = 1e-9;

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
  return settings;
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

/**
 * Whether an input takes a value, leaving a last digit to changes of unit.
 * @param {Input} input @param {unknown} value
 */
export function isInRange({ low, high, whole }, value) {
  const slack = SLACK * Math.max(Math.abs(low), Math.abs(high));
  if (typeof value !== "number" || !(value >= low - slack && value <= high + slack)) return false;
  return !whole || Number.isInteger(value);
}

/**
 * Compute every result in order. A result that is refused takes along those that use it. Given a day that these
 * formulas computed before, only what comes after a changed setting is computed again.
 * @param {{steps: Record<string, Step>, uses: Record<string, string[]>,
 *   watches: Record<string, {uses: string[], when: (v: Settings) => boolean}>}} formulas
 * @param {Settings} settings @param {Day} [before] @returns {Day}
 */
export function computeOn({ steps, uses, watches }, settings, before) {
  /** @type {Day} */ const day = { values: { ...settings }, refused: {}, alerts: [] };
  const moved = new Set(before ? Object.keys(settings).filter((name) => settings[name] !== before.values[name]) : []);
  const stays = (/** @type {string[]} */ used) => before !== undefined && !used.some((id) => moved.has(id));
  for (const [name, step] of Object.entries(steps)) {
    if (before && stays(uses[name])) take(before, name, day);
    else run(name, step, uses[name], day);
    if (before && (name in day.refused || day.values[name] !== before.values[name])) moved.add(name);
  }
  day.alerts = Object.keys(watches).filter((name) => {
    const { uses: used, when } = watches[name];
    if (stays(used)) return before?.alerts.includes(name);
    return !used.some((id) => id in day.refused) && attempt(when, day.values) === true;
  });
  return day;
}

/** @param {Day} from @param {string} name @param {Day} to */
function take(from, name, to) {
  if (name in from.refused) to.refused[name] = from.refused[name];
  else to.values[name] = from.values[name];
}

/** @param {string} name @param {Step} step @param {string[]} used @param {Day} day  what it gives is put into it */
function run(name, step, used, { values, refused }) {
  const culprit = used.find((id) => id in refused);
  const refusal = culprit
    ? { ...refused[culprit], because: refused[culprit].because ?? culprit }
    : unmet(name, step, values);
  const value = refusal ? null : attempt(step.formula, values);
  if (value === null) refused[name] = refusal ?? noNumber();
  else values[name] = value;
}

/** @param {string} name @param {Step} step @param {Settings} values */
function unmet(name, step, values) {
  for (const [number, condition] of step.require.entries()) {
    const met = attempt(condition.that, values);
    if (met === null) return noNumber();
    if (!met) return { sentence: `${name}:${number}`, input: condition.input, because: null };
  }
  return null;
}

const noNumber = () => ({ sentence: "not_finite", input: null, because: null });

/**
 * What it gives, or null where it has no finite value.
 * @template T @param {(v: Settings) => T} compute @param {Settings} values
 */
export function attempt(compute, values) {
  try {
    const found = compute(values);
    return typeof found === "number" && !Number.isFinite(found) ? null : found;
  } catch (error) {
    if (error instanceof NotANumber) return null;
    throw error;
  }
}
