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
  const show = (/** @type {number} */ value) => shower(formulas)(id, value, plan.system(), "first");
  /** @type {{size: number, change: import("./plan_state.js").Value | undefined} | undefined} what stood there when somebody came to type: a bare number goes by its size, and what is not taken leaves it standing */ let before;
  const typed = () => readTyped(box.value, id, formulas, plan.system(), before?.size ?? now());

  /** While somebody is typing they are not told off: what is there may be a beginning. @param {import("./typed.js").Typed} typed @param {boolean} [done] */
  function take(typed, done = true) {
    const refused = whyNot(typed, input, show);
    if (refused && before && plan.changes()[id] !== before.change) plan.set(id, before.change);
    refuse(field, refused && done ? `${refused} ${say("read_still", { value: show(now()) })}` : "");
    if (refused) return;
    if (before && done) before.change = typed.value;
    forget(field);
    plan.set(id, typed.value);
  }

  box.addEventListener("focus", () => {
    before = { size: now(), change: plan.changes()[id] };
    box.select();
  });
  box.addEventListener("input", () => take(typed(), false));
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

/**
 * Why an input does not take what is typed; empty where it does.
 * @param {import("./typed.js").Typed} typed @param {import("./settling.js").Input} input @param {(value: number) => string} show
 */
function whyNot({ value, refused }, input, show) {
  if (refused) return refused;
  if (input.whole && !Number.isInteger(value)) return say("read_whole");
  if (isInRange(input, value)) return "";
  return Number(value) < input.low ? say("read_low", { low: show(input.low) }) : say("read_high", { high: show(input.high) });
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
