// The fields of the plan: what is typed or stepped is kept at once, and everything follows.

import { inPieces } from "./breathing.js";
import { fieldPainters, forget, groupsOf, part, refuse, showValue, wholePainters } from "./fields_shown.js";
import { allIn, holdsBack } from "./folds.js";
import { loaded, shower } from "./paint.js";
import { isInRange } from "./settling.js";
import { readTyped, stepped } from "./typed.js";
import { say } from "./words_said.js";

/** @typedef {import("./plan_state.js").Plan} Plan */

/** @param {{plan: Plan}} page */
export async function mountPlanFields({ plan }) {
  const form = /** @type {HTMLFormElement | null} */ (document.querySelector("[data-plan]"));
  if (!form) return;
  form.addEventListener("submit", (event) => event.preventDefault());
  form.inert = true; // nothing typed before anyone listens is lost
  const formulas = await loaded(plan);
  await plan.prepare(formulas);
  bindWhole(plan);
  const painters = wholePainters(form);
  const paint = () => {
    const [changed, outcome] = [plan.changes(), plan.compute(formulas)];
    for (const paintPart of painters) paintPart(changed, outcome, plan);
  };
  const binders = (/** @type {Element} */ group) => [
    ...allIn(group, "[data-input]").map((field) => () => bindInput(field, plan, formulas)),
    ...allIn(group, "[data-choice-field]").map((field) => () => bindChoice(field, plan)),
    () => void painters.push(...fieldPainters(group)),
  ];
  form.addEventListener("unfolded", ({ target }) => {
    for (const act of binders(/** @type {Element} */ (target))) act();
    paint();
  });
  await inPieces(groupsOf(form).filter((group) => !holdsBack(group)).flatMap(binders), (act) => act());
  paint();
  form.inert = false;
  form.dataset.bound = "";
  const stop = plan.watch(() => (form.isConnected ? paint() : stop()));
}

/** @param {HTMLElement} field @param {Plan} plan @param {import("./plan_state.js").Formulas} formulas */
function bindInput(field, plan, formulas) {
  const id = field.dataset.input ?? "";
  const box = /** @type {HTMLInputElement} */ (part(field, "input"));
  const input = formulas.inputs[id];
  const now = () => Number(plan.compute(formulas).settings[id]);
  /** @type {number | undefined} what stood there when somebody came to type: a bare number goes by that, not by the digits typed so far */ let before;
  const typed = () => readTyped(box.value, id, formulas, plan.system(), before ?? now());

  function take(/** @type {import("./typed.js").Typed} */ { value, refused = "" }) {
    const show = (/** @type {number} */ value) => shower(formulas)(id, value, plan.system(), "first");
    if (!refused && input.whole && !Number.isInteger(value)) refused = say("read_whole");
    else if (!refused && !isInRange(input, value)) {
      refused = Number(value) < input.low ? say("read_low", { low: show(input.low) }) : say("read_high", { high: show(input.high) });
    }
    refuse(field, refused);
    if (refused) return;
    forget(field);
    plan.set(id, value);
  }

  box.addEventListener("focus", () => {
    before = now();
    box.select();
  });
  box.addEventListener("input", () => box.value.trim() && take(typed()));
  box.addEventListener("change", () => take(typed()));
  box.addEventListener("blur", () => {
    before = undefined;
    if (box.getAttribute("aria-invalid") !== "true") showValue(box, id, plan, plan.compute(formulas));
  });
  for (const [name, way] of /** @type {[string, 1 | -1][]} */ ([["[data-less]", -1], ["[data-more]", 1]])) {
    part(field, name).addEventListener("click", () => {
      const value = stepped(now(), way, id, formulas, plan.system());
      take({ value: Math.min(input.high, Math.max(input.low, value)) });
      box.blur();
    });
  }
  part(field, "[data-reset]").addEventListener("click", () => {
    refuse(field, "");
    forget(field);
    plan.set(id, undefined);
  });
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
