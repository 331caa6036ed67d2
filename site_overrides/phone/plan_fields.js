// The fields of the plan: what is typed or stepped is kept at once, and everything follows.

import { loaded, shower } from "./paint.js";
import { isInRange } from "./settling.js";
import { readTyped, stepped } from "./typed.js";
import { say } from "./words_said.js";

/**
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./plan_state.js").Outcome} Outcome
 */

/** @param {{plan: Plan}} page */
export async function mountPlanFields({ plan }) {
  const form = /** @type {HTMLFormElement | null} */ (document.querySelector("[data-plan]"));
  if (!form) return;
  form.addEventListener("submit", (event) => event.preventDefault());
  form.inert = true; // nothing typed before anyone listens is lost
  const formulas = await loaded(plan);
  const inputs = /** @type {HTMLElement[]} */ ([...form.querySelectorAll("[data-input]")]);
  const choices = /** @type {HTMLElement[]} */ ([...form.querySelectorAll("[data-choice-field]")]);
  for (const field of inputs) bindInput(field, plan, formulas);
  for (const field of choices) bindChoice(field, plan);
  bindWhole(plan);
  const paint = () => paintFields(plan, plan.compute(formulas), inputs, choices);
  paint();
  form.inert = false;
  form.dataset.bound = "";
  const stop = plan.watch(() => (form.isConnected ? paint() : stop()));
}

/** @param {HTMLElement} field @param {string} name @returns {any} */
const part = (field, name) => field.querySelector(name);

/** @param {HTMLElement} field @param {Plan} plan @param {import("./plan_state.js").Formulas} formulas */
function bindInput(field, plan, formulas) {
  const id = field.dataset.input ?? "";
  const box = /** @type {HTMLInputElement} */ (part(field, "input"));
  const input = formulas.inputs[id];
  const now = () => Number(plan.compute(formulas).settings[id]);

  function take(/** @type {import("./typed.js").Typed} */ typed) {
    const show = (/** @type {number} */ value) => shower(formulas)(id, value, plan.system(), "first");
    let refused = typed.refused ?? "";
    if (!refused && input.whole && !Number.isInteger(typed.value)) refused = say("read_whole");
    else if (!refused && !isInRange(input, typed.value)) {
      refused = Number(typed.value) < input.low ? say("read_low", { low: show(input.low) }) : say("read_high", { high: show(input.high) });
    }
    refuse(field, refused);
    if (!refused) plan.set(id, typed.value);
  }

  box.addEventListener("focus", () => box.select());
  box.addEventListener("input", () => box.value.trim() && take(readTyped(box.value, id, formulas, plan.system(), now())));
  box.addEventListener("change", () => take(readTyped(box.value, id, formulas, plan.system(), now())));
  box.addEventListener("blur", () => box.getAttribute("aria-invalid") !== "true" && showValue(box, id, plan, plan.compute(formulas)));
  for (const [name, way] of /** @type {[string, 1 | -1][]} */ ([["[data-less]", -1], ["[data-more]", 1]])) {
    part(field, name).addEventListener("click", () => {
      const value = stepped(now(), way, id, formulas, plan.system());
      take({ value: Math.min(input.high, Math.max(input.low, value)) });
      box.blur();
    });
  }
  part(field, "[data-reset]").addEventListener("click", () => {
    refuse(field, "");
    plan.set(id, undefined);
  });
}

/** Shows why what is typed is not taken. @param {HTMLElement} field @param {string} sentence */
function refuse(field, sentence) {
  part(field, "[data-refused]").textContent = sentence;
  part(field, "[data-refused]").hidden = !sentence;
  part(field, "input").setAttribute("aria-invalid", String(Boolean(sentence)));
}

/** @param {HTMLElement} field @param {Plan} plan */
function bindChoice(field, plan) {
  const id = field.dataset.choiceField ?? "";
  part(field, "select").addEventListener("change", () => plan.set(id, part(field, "select").value));
  part(field, "[data-reset]").addEventListener("click", () => plan.set(id, undefined));
}

/** @param {Plan} plan */
function bindWhole(plan) {
  for (const button of /** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll("[data-units]"))) {
    button.checked = button.value === plan.system();
    button.addEventListener("change", () => plan.setSystem(button.value));
  }
  document.querySelector("[data-reset-all]")?.addEventListener("click", () => {
    if (confirm(say("reset_all_confirm"))) plan.setAll(Object.fromEntries(Object.keys(plan.changes()).map((id) => [id, undefined])));
  });
}

/** @param {Plan} plan @param {Outcome} outcome @param {HTMLElement[]} inputs @param {HTMLElement[]} choices */
function paintFields(plan, outcome, inputs, choices) {
  const changes = plan.changes();
  const show = shower(outcome.formulas);
  for (const field of inputs) {
    const id = field.dataset.input ?? "";
    const box = /** @type {HTMLInputElement} */ (part(field, "input"));
    if (document.activeElement !== box) showValue(box, id, plan, outcome);
    mark(field, id in changes);
    const { low, high } = outcome.formulas.inputs[id];
    part(field, "[data-default]").textContent = show(id, outcome.defaults[id], plan.system(), "first");
    if (part(field, "[data-low]")) part(field, "[data-low]").textContent = show(id, low, plan.system(), "first");
    if (part(field, "[data-high]")) part(field, "[data-high]").textContent = show(id, high, plan.system(), "first");
  }
  for (const field of choices) {
    const id = field.dataset.choiceField ?? "";
    part(field, "select").value = plan.option(id);
    mark(field, id in changes);
  }
  paintRefusals(outcome);
  paintCounts(changes);
}

/** @param {HTMLInputElement} box @param {string} id @param {Plan} plan @param {Outcome} outcome */
function showValue(box, id, plan, outcome) {
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
