// Words and titles for the pages about the plan.

import { refusals, titles, words } from "./plan_content.js";
import { loaded, shower } from "./paint.js";
import { options } from "./words.js";
import { filled } from "./words_said.js";

/** @typedef {import("./plan_state.js").Plan} Plan @typedef {import("./plan_state.js").Value} Value */

/** @param {string} id @param {import("./words_said.js").Parts} [parts] */
export const tell = (id, parts = {}) => filled(words[id], parts);

/** The title of a quantity or a choice. @param {string} id */
export const titleOf = (id) => titles[id] ?? id;

/**
 * Says values of quantities and options of choices, in the units that stand first.
 * @param {Plan} plan @param {import("./plan_state.js").Formulas} formulas
 * @returns {(id: string, value: Value | undefined, part?: string) => string}
 */
export function sayer(plan, formulas) {
  const show = shower(formulas);
  return (id, value, part = "first") => {
    if (value === undefined) return "–";
    return id in options ? options[id][String(value)] ?? String(value) : show(id, value, plan.system(), part);
  };
}

/**
 * Why a result is refused, with the numbers of the day in the sentence.
 * @param {import("./running.js").Refusal} refusal @param {Record<string, Value>} values @param {(id: string, value: Value | undefined, part?: string) => string} said
 */
export function refusalOf(refusal, values, said) {
  return withValues(refusals[refusal.sentence] ?? refusals.not_finite, values, said);
}

/** A sentence of content with its numbers. @param {string} sentence @param {Record<string, Value>} values @param {(id: string, value: Value | undefined, part?: string) => string} said */
export function withValues(sentence, values, said) {
  return sentence.replace(/\{([a-z0-9_]+)( first)?\}/g, (_, id, first) => said(id, values[id], first ? "first" : "both"));
}

/**
 * Paints now and at every change, as long as the element is on the page.
 * @param {Plan} plan @param {Element} element @param {(formulas: import("./plan_state.js").Formulas) => void} paint
 */
export async function follow(plan, element, paint) {
  const formulas = await loaded(plan);
  paint(formulas);
  const stop = plan.watch(() => (element.isConnected ? paint(formulas) : stop()));
}
