// What the fields of the plan show.

import { shower } from "./paint.js";
import { say } from "./words_said.js";

/**
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./plan_state.js").Outcome} Outcome
 */

/** @type {WeakMap<HTMLElement, string>} what fields show, so that those that stay as they are cost nothing */
const shown = new WeakMap();

/** What somebody typed into a field is painted over, even where its value stays. @param {HTMLElement} field */
export const forget = (field) => shown.delete(field);

/** @param {HTMLElement} field @param {string} name @returns {any} */
export const part = (field, name) => field.querySelector(name);

/** Shows why what is typed is not taken. @param {HTMLElement} field @param {string} sentence */
export function refuse(field, sentence) {
  part(field, "[data-refused]").textContent = sentence;
  part(field, "[data-refused]").hidden = !sentence;
  part(field, "input").setAttribute("aria-invalid", String(Boolean(sentence)));
}

/** @param {Plan} plan @param {Outcome} outcome @param {HTMLElement[]} inputs @param {HTMLElement[]} choices */
export function paintFields(plan, outcome, inputs, choices) {
  const changes = plan.changes();
  for (const field of inputs) {
    const id = field.dataset.input ?? "";
    const what = `${plan.system()} ${outcome.settings[id]} ${outcome.defaults[id]} ${id in changes}`;
    if (shown.get(field) === what) continue;
    shown.set(field, what);
    paintInput(field, plan, outcome, id in changes);
  }
  for (const field of choices) {
    const id = field.dataset.choiceField ?? "";
    part(field, "select").value = plan.option(id);
    mark(field, id in changes);
  }
  paintRefusals(outcome);
  paintCounts(changes);
}

/** @param {HTMLElement} field @param {Plan} plan @param {Outcome} outcome @param {boolean} changed */
function paintInput(field, plan, outcome, changed) {
  const id = field.dataset.input ?? "";
  const show = shower(outcome.formulas);
  const write = (/** @type {string} */ name, /** @type {number} */ value) => {
    if (part(field, name)) part(field, name).textContent = show(id, value, plan.system(), "first");
  };
  const { low, high } = outcome.formulas.inputs[id];
  const box = part(field, "input");
  if (document.activeElement !== box) {
    showValue(box, id, plan, outcome);
    if (box.getAttribute("aria-invalid") === "true") refuse(field, "");
  }
  mark(field, changed);
  write("[data-default]", Number(outcome.defaults[id]));
  write("[data-low]", low);
  write("[data-high]", high);
}

/** @param {HTMLInputElement} box @param {string} id @param {Plan} plan @param {Outcome} outcome */
export function showValue(box, id, plan, outcome) {
  box.value = shower(outcome.formulas)(id, outcome.settings[id], plan.system(), "first").replace(/\u00a0/g, " ");
}

/** @param {HTMLElement} field @param {boolean} changed */
function mark(field, changed) {
  part(field, "[data-changed]").hidden = part(field, "[data-reset]").hidden = !changed;
  field.classList.toggle("field--changed", changed);
}

/** @param {Outcome} outcome */
function paintRefusals({ day }) {
  const sentences = new Set(Object.values(day.refused).map(({ sentence }) => sentence));
  for (const element of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-refusal]"))) {
    element.hidden = !element.dataset.refusal?.split(" ").some((key) => sentences.has(key));
  }
}

/** @param {Record<string, unknown>} changes */
function paintCounts(changes) {
  for (const group of document.querySelectorAll(".fold--group")) {
    const count = group.querySelectorAll(".field--changed").length;
    const mark_ = /** @type {HTMLElement} */ (group.querySelector("[data-changed-count]"));
    mark_.hidden = count === 0;
    mark_.textContent = say("changes", { count });
  }
  const all = /** @type {HTMLElement | null} */ (document.querySelector("[data-reset-all]"));
  if (all) all.hidden = Object.keys(changes).length === 0;
}
