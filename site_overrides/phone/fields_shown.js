// What the fields of the plan show.

import { hide, mark, write } from "./changing.js";
import { allIn } from "./folds.js";
import { shower } from "./paint.js";
import { say } from "./words_said.js";

/**
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./plan_state.js").Outcome} Outcome
 */

/** @type {WeakSet<HTMLElement>} */
const typedInto = new WeakSet();

/** What somebody typed into a field is painted over, even where its value stays. @param {HTMLElement} field */
export const forget = (field) => typedInto.add(field);

/** @param {HTMLElement} field @param {string} name @returns {any} */
export const part = (field, name) => field.querySelector(name);

/** Shows why what is typed is not taken. @param {HTMLElement} field @param {string} sentence */
export function refuse(field, sentence) {
  write(part(field, "[data-refused]"), sentence);
  hide(part(field, "[data-refused]"), !sentence);
  mark(part(field, "input"), "aria-invalid", String(Boolean(sentence)));
}

/** @typedef {Record<string, unknown>} Changed */
/** @typedef {(changed: Changed, outcome: Outcome, plan: Plan) => void} Painter */

/** The groups of fields of a form, or the form where it has none. @param {HTMLFormElement} form @returns {Element[]} */
export function groupsOf(form) {
  const groups = all(form, ".fold--group");
  return groups.length ? groups : [form];
}

/** Looks up once what the fields of a group have to show. Together, what it returns paints a changed plan. @param {Element} group @returns {Painter[]} */
export const fieldPainters = (group) => [inputs(all(group, "[data-input]")), choices(all(group, "[data-choice-field]")), refusals(all(group, "[data-refusal]"))];

/** The same for what is not of one field. @param {HTMLFormElement} form @returns {Painter[]} */
export const wholePainters = (form) => [counts(all(form, ".fold--group")), resets(all(document, "[data-reset-all]"))];

/** @param {ParentNode} within @param {string} name @returns {HTMLElement[]} */
const all = (within, name) => [.../** @type {NodeListOf<HTMLElement>} */ (within.querySelectorAll(name))];

/** Fields that stay as they are cost next to nothing. @param {HTMLElement[]} fields */
function inputs(fields) {
  const kept = fields.map((field) => ({ field, id: field.dataset.input ?? "", shown: /** @type {unknown} */ (undefined), standard: /** @type {unknown} */ (undefined), changed: false }));
  let system = "";
  return (/** @type {Changed} */ changed, /** @type {Outcome} */ outcome, /** @type {Plan} */ plan) => {
    const { settings, defaults } = outcome;
    const anew = system !== plan.system();
    system = plan.system();
    for (const one of kept) {
      const { field, id } = one;
      const same = one.shown === settings[id] && one.standard === defaults[id] && one.changed === id in changed;
      if (same && !anew && !typedInto.has(field)) continue;
      typedInto.delete(field);
      Object.assign(one, { shown: settings[id], standard: defaults[id], changed: id in changed });
      paintInput(field, plan, outcome, one.changed);
    }
  };
}

/** @param {HTMLElement} field @param {Plan} plan @param {Outcome} outcome @param {boolean} changed */
function paintInput(field, plan, outcome, changed) {
  const id = field.dataset.input ?? "";
  const show = shower(outcome.formulas);
  const tell = (/** @type {string} */ name, /** @type {number} */ value) => {
    if (part(field, name)) write(part(field, name), show(id, value, plan.system(), "first"));
  };
  const { low, high } = outcome.formulas.inputs[id];
  const box = part(field, "input");
  if (document.activeElement !== box) {
    showValue(box, id, plan, outcome);
    if (box.getAttribute("aria-invalid") === "true") refuse(field, "");
  }
  markChanged(field, changed);
  tell("[data-default]", Number(outcome.defaults[id]));
  tell("[data-low]", low);
  tell("[data-high]", high);
}

/** @param {HTMLInputElement} box @param {string} id @param {Plan} plan @param {Outcome} outcome */
export function showValue(box, id, plan, outcome) {
  const words = shower(outcome.formulas)(id, outcome.settings[id], plan.system(), "first").replace(/\u00a0/g, " ");
  if (box.value !== words) box.value = words;
}

/** @param {HTMLElement} field @param {boolean} changed */
function markChanged(field, changed) {
  hide(part(field, "[data-changed]"), !changed);
  hide(part(field, "[data-reset]"), !changed);
  field.classList.toggle("field--changed", changed);
}

/** @param {HTMLElement[]} fields */
const choices = (fields) => (/** @type {Changed} */ changed, /** @type {Outcome} */ _, /** @type {Plan} */ plan) => {
  for (const field of fields) {
    const id = field.dataset.choiceField ?? "";
    const select = part(field, "select");
    if (select.value !== plan.option(id)) select.value = plan.option(id);
    markChanged(field, id in changed);
  }
};

/** @param {HTMLElement[]} elements */
function refusals(elements) {
  const kept = elements.map((element) => ({ element, keys: (element.dataset.refusal ?? "").split(" ") }));
  return (/** @type {Changed} */ _, /** @type {Outcome} */ { day }) => {
    const sentences = new Set(Object.values(day.refused).map(({ sentence }) => sentence));
    for (const { element, keys } of kept) hide(element, !keys.some((key) => sentences.has(key)));
  };
}

/** How many fields of each group are changed. @param {HTMLElement[]} groups */
function counts(groups) {
  const kept = groups.map((group) => ({
    count: part(group, "[data-changed-count]"),
    ids: allIn(group, "[data-input], [data-choice-field]").map(({ id }) => id),
  }));
  return (/** @type {Changed} */ changed) => {
    for (const { count, ids } of kept) {
      const many = ids.filter((id) => id in changed).length;
      hide(count, many === 0);
      write(count, say("changes", { count: many }));
    }
  };
}

/** @param {HTMLElement[]} buttons */
const resets = (buttons) => (/** @type {Changed} */ changed) => buttons.forEach((button) => hide(button, Object.keys(changed).length === 0));
