/**
 * Computes the day of a settled plan, as `generator/computing/running.py` does.
 *
 * @typedef {import("./settling.js").Settings} Settings
 * @typedef {{sentence: string, input: string | null, because: string | null}} Refusal `sentence` is a key of words
 * @typedef {{that: (v: Settings) => boolean, input: string | null}} Condition
 * @typedef {{formula: (v: Settings) => number | string, require?: Condition[]}} Step
 * @typedef {{values: Settings, refused: Record<string, Refusal>, alerts: string[]}} Day
 * @typedef {{uses: string[], when: (v: Settings) => boolean}} Watch
 * @typedef {{steps: Record<string, Step>, uses: Record<string, string[]>, watches: Record<string, Watch>}} Sheet
 */

import { inPieces } from "./breathing.js";
import { NotANumber } from "./runtime.js";

/**
 * Compute every result in order. A result that is refused takes along those that use it. Given a day that these
 * formulas computed before, only what comes after a changed setting is computed again.
 * @param {Sheet} sheet @param {Settings} settings @param {Day} [before] @returns {Day}
 */
export const computeOn = (sheet, settings, before) => (before ? computeAgain(sheet, settings, before) : computeAnew(sheet, settings));

/** @param {Sheet} sheet @param {Settings} settings */
function computeAnew(sheet, settings) {
  const { day, next, close } = begin(sheet, settings);
  for (const name in sheet.steps) next(name);
  close();
  return day;
}

/** The same a little at a time, ahead of need. @param {Sheet} sheet @param {Settings} settings @returns {Promise<Day>} */
export async function computeAhead(sheet, settings) {
  const { day, next, close } = begin(sheet, settings);
  await inPieces(Object.keys(sheet.steps), next);
  close();
  return day;
}

/** @param {Sheet} sheet @param {Settings} settings */
function begin({ steps, uses, watches }, settings) {
  /** @type {Day} */ const day = { values: { ...settings }, refused: {}, alerts: [] };
  return {
    day,
    next: (/** @type {string} */ name) => run(name, steps[name], uses[name], day),
    close: () => void (day.alerts = Object.keys(watches).filter((name) => holds(watches[name], day))),
  };
}

/** @param {Sheet} sheet @param {Settings} settings @param {Day} before */
function computeAgain({ steps, uses, watches }, settings, before) {
  /** @type {Day} */ const day = { values: { ...before.values, ...settings }, refused: {}, alerts: [] };
  const users = usersOf(uses);
  /** @type {Set<string>} */ const moved = new Set();
  /** @type {Set<string>} */ const due = new Set();
  const move = (/** @type {string} */ name) => {
    moved.add(name);
    users.get(name)?.forEach((user) => due.add(user));
  };
  for (const name in settings) if (settings[name] !== before.values[name]) move(name);
  for (const name in steps) {
    if (due.has(name)) {
      run(name, steps[name], uses[name], day);
      if (name in day.refused || day.values[name] !== before.values[name]) move(name);
    } else if (name in before.refused) day.refused[name] = before.refused[name];
  }
  day.alerts = Object.keys(watches).filter((name) => {
    const stays = !watches[name].uses.some((id) => moved.has(id));
    return stays ? before.alerts.includes(name) : holds(watches[name], day);
  });
  return day;
}

/** @type {WeakMap<Sheet["uses"], Map<string, string[]>>} */
const turned = new WeakMap();

/** The results that use each setting or result. @param {Sheet["uses"]} uses */
function usersOf(uses) {
  const known = turned.get(uses);
  if (known) return known;
  /** @type {Map<string, string[]>} */ const users = new Map();
  for (const name in uses) {
    for (const used of uses[name]) users.set(used, [...(users.get(used) ?? []), name]);
  }
  turned.set(uses, users);
  return users;
}

/** @param {string} name @param {Step} step @param {string[]} used @param {Day} day  what it gives takes the place of what is there */
function run(name, step, used, { values, refused }) {
  const culprit = used.find((id) => id in refused);
  const refusal = culprit
    ? { ...refused[culprit], because: refused[culprit].because ?? culprit }
    : unmet(name, step, values);
  const value = refusal ? null : attempt(step.formula, values);
  if (value !== null) values[name] = value;
  else {
    refused[name] = refusal ?? noNumber();
    delete values[name];
  }
}

/** @param {Watch} watch @param {Day} day */
const holds = ({ uses, when }, { values, refused }) => !uses.some((id) => id in refused) && attempt(when, values) === true;

/** @param {string} name @param {Step} step @param {Settings} values */
function unmet(name, step, values) {
  for (const [number, condition] of step.require?.entries() ?? []) {
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
