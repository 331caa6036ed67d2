/**
 * Questions made ready to be asked: numbers drawn and worked out with the day's formulas, answers mixed.
 * Touches neither the page nor the store; chance is handed in. Where a number has no value, neither has what rests on it.
 *
 * @typedef {import("./plan_state.js").Value} Value
 * @typedef {Record<string, Value>} Values
 * @typedef {{says: string, why?: string, right?: boolean, when?: (values: Values) => boolean}} Answer
 * @typedef {{asks: string, why: string, picture?: string, procedure: string, part: string, address: string, title: string,
 *   sources?: string[], vary?: Record<string, [number, number]>, draws?: Record<string, [string, number, number]>,
 *   works?: Record<string, [string, (values: Values) => number]>, answers?: Record<string, Answer>,
 *   arrange?: [string, string][]}} Drill
 * @typedef {{id: string, says: string, why: string, right: boolean}} Choice
 * @typedef {{asks: string, why: string, choices: Choice[]}} Posed  `choices` in the order to show; to arrange: the right order is that of `drill.arrange`
 * @typedef {{settle: (changes: Values) => Values, compute: (settings: Values) => {values: Values}}} Formulas
 * @typedef {{changes: Values, round: (value: number, of: string, measure: string) => number,
 *   say: (text: string, values: Values, measures: Record<string, string>) => string | undefined, random: () => number}} Table
 *   `say` gives nothing where a number is refused; `round` gives a drawn value as it is shown, so that nobody is asked about digits that cannot be read
 */

import { attempt } from "./running.js";

const TRIES = 40;

/** The question with its numbers, or undefined where the plan gives it none. @param {Drill} drill @param {Formulas} formulas @param {Table} table @returns {Posed | undefined} */
export function pose(drill, formulas, table) {
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const posed = poseOnce(drill, formulas, table);
    if (posed) return posed;
  }
  return undefined;
}

/** @param {Drill} drill @param {Formulas} formulas @param {Table} table @returns {Posed | undefined} */
function poseOnce(drill, formulas, table) {
  const values = valuesFor(drill, formulas, table);
  const measures = measuresOf(drill);
  let whole = true;
  const said = (/** @type {string} */ text) => {
    const words = table.say(text, values, measures);
    whole &&= words !== undefined;
    return words ?? "";
  };
  const [asks, why] = [said(drill.asks), said(drill.why)];
  const steps = (drill.arrange ?? []).map(([id, action]) => ({ id, says: said(action), why: "", right: true }));
  const answers = Object.entries(drill.answers ?? {}).map(([id, answer]) => ({
    id, says: said(answer.says), why: said(answer.why ?? ""), right: Boolean(answer.right || (answer.when && attempt(answer.when, values))),
  }));
  if (!whole) return undefined;
  if (steps.length) return { asks, why, choices: mixed(steps, table.random) };
  const differ = new Set(answers.map(({ says }) => says)).size === answers.length;
  const oneRight = answers.filter(({ right }) => right).length === 1;
  return differ && oneRight ? { asks, why, choices: mixed(answers, table.random) } : undefined;
}

/** The day's values with inputs varied, and with what is drawn and worked out. @param {Drill} drill @param {Formulas} formulas @param {Table} table @returns {Values} */
export function valuesFor(drill, { settle, compute }, { changes, round, random }) {
  const between = (/** @type {number} */ low, /** @type {number} */ high) => low + (high - low) * random();
  const varied = Object.entries(drill.vary ?? {}).map(([id, [low, high]]) => [id, round(between(low, high), id, "")]);
  const { values } = compute(settle({ ...changes, ...Object.fromEntries(varied) }));
  for (const [name, [measure, low, high]] of Object.entries(drill.draws ?? {})) values[name] = round(between(low, high), name, measure);
  for (const [name, [, formula]] of Object.entries(drill.works ?? {})) {
    const worked = attempt(formula, values);
    if (worked !== null) values[name] = worked;
  }
  return values;
}

/** The measure of each number that only the drill knows. @param {Drill} drill @returns {Record<string, string>} */
export function measuresOf({ draws = {}, works = {} }) {
  return Object.fromEntries([...Object.entries(draws), ...Object.entries(works)].map(([name, [measure]]) => [name, measure]));
}

/** @template Item @param {Item[]} items @param {() => number} random @returns {Item[]} */
function mixed(items, random) {
  const rest = [...items];
  for (let place = rest.length - 1; place > 0; place -= 1) {
    const other = Math.floor(random() * (place + 1));
    [rest[place], rest[other]] = [rest[other], rest[place]];
  }
  return rest;
}
