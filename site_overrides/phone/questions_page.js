// What is asked of the plan: answers follow what is typed, and change nothing until they are taken.

import { element } from "./element.js";
import { loaded } from "./paint.js";
import { along, asking, neededFor } from "./part_of_day.js";
import { questions } from "./plan_content.js";
import { stopsWith } from "./stops_told.js";
import { follow, sayer, tell, titleOf } from "./plan_words.js";
import { doubtful, likely, solve, weigh } from "./solving.js";
import { readTyped, stepped } from "./typed.js";

/**
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./plan_state.js").Formulas} Formulas
 * @typedef {{vary: string, seek: "most" | "least", until: string, stays: "at_most" | "at_least", start: string}} Search
 * @typedef {{give: string, tells: string[]}} Trial
 * @typedef {{search: Search, trial?: undefined} | {search?: undefined, trial: Trial}} Question
 */

const MOST = 10;

/** @param {HTMLElement} element @param {string} name @returns {any} */
const part = (element, name) => element.querySelector(name);

/** @param {{plan: Plan}} page @param {HTMLElement} place */
export async function mountQuestion({ plan }, place) {
  const { search, trial } = questions[place.dataset.question ?? ""];
  const id = search ? search.start : trial.give;
  const formulas = await loaded(plan);
  const field = /** @type {HTMLInputElement} */ (part(place, "input"));
  /** @type {number | undefined} what was typed; the plan's own value until then */
  let asked;
  const now = () => asked ?? Number(plan.compute(formulas).day.values[id]);
  const paint = () => {
    const said = sayer(plan, formulas);
    if (document.activeElement !== field) field.value = said(id, now()).replace(/\u00a0/g, " ");
    if (search) paintSearch(place, plan, formulas, search, now());
    else paintTrial(place, plan, formulas, trial, now());
  };
  const take = (/** @type {import("./typed.js").Typed} */ { value, refused = "" }) => {
    part(place, "[data-refused]").textContent = refused;
    part(place, "[data-refused]").hidden = !refused;
    field.setAttribute("aria-invalid", String(Boolean(refused)));
    if (refused) return void part(place, "[data-answer]").replaceChildren();
    asked = value;
    paint();
  };
  field.addEventListener("focus", () => field.select());
  field.addEventListener("change", () => take(readTyped(field.value, id, formulas, plan.system(), now())));
  for (const [name, way] of /** @type {[string, 1 | -1][]} */ ([["[data-less]", -1], ["[data-more]", 1]])) {
    part(place, name).addEventListener("click", () => take({ value: stepped(now(), way, id, formulas, plan.system()) }));
  }
  follow(plan, place, paint);
}

/** @param {HTMLElement} place @param {Plan} plan @param {Formulas} formulas @param {Search} search @param {number} bound */
function paintSearch(place, plan, formulas, search, bound) {
  const { settings } = plan.compute(formulas);
  const said = sayer(plan, formulas);
  const fits = (/** @type {number} */ result) => (search.stays === "at_most" ? result <= bound + 1e-6 : result >= bound - 1e-6);
  const answer = solve(along(formulas, settings, search.vary, search.until), formulas.inputs[search.vary], search.seek, fits);
  const words = tell(!answer ? "ask_none" : answer.edge ? `ask_edge_${search.seek}` : "ask_found", { title: titleOf(search.vary) });
  const [before, after] = words.split(" {value}");
  const big = Object.assign(document.createElement("b"), { textContent: answer ? said(search.vary, answer.value, "both") : "" });
  part(place, "[data-answer]").replaceChildren(before, big, after ?? "");
  const take = part(place, "[data-take]");
  take.hidden = !answer || Math.abs(answer.value - Number(settings[search.vary])) < 1e-9;
  take.textContent = answer ? tell("ask_take", { value: said(search.vary, answer.value) }) : "";
  const stops = answer && !take.hidden ? stopsWith(plan, formulas, { [search.vary]: answer.value }) : [];
  if (stops.length) part(place, "[data-answer]").append(element("p", { class: "field__refused" }, tell("ask_stops", { titles: stops.join("; ") })));
  take.onclick = () => answer && plan.set(search.vary, answer.value);
}

/** @param {HTMLElement} place @param {Plan} plan @param {Formulas} formulas @param {Trial} trial @param {number} value */
function paintTrial(place, plan, formulas, { give, tells }, value) {
  const { settings } = plan.compute(formulas);
  const { low, high } = formulas.inputs[give];
  const said = sayer(plan, formulas);
  if (value < low || value > high) {
    return part(place, "[data-answer]").replaceChildren(tell("ask_outside", { low: said(give, low), high: said(give, high) }));
  }
  const values = asking(formulas, settings, give, tells)(value);
  part(place, "[data-answer]").replaceChildren(...tells.map((id) => {
    const row = document.createElement("p");
    row.append(`${titleOf(id)} `, Object.assign(document.createElement("b"), { textContent: said(id, values[id], "both") }));
    return row;
  }));
}

/** @param {{plan: Plan}} page @param {HTMLElement} list */
export function mountMatters({ plan }, list) {
  const choice = /** @type {HTMLSelectElement} */ (document.querySelector("[data-matters-of]"));
  const paint = async () => paintMatters(list, plan, await loaded(plan), choice.value);
  choice.addEventListener("change", paint);
  follow(plan, list, paint);
}

/** @param {HTMLElement} list @param {Plan} plan @param {Formulas} formulas @param {string} result */
function paintMatters(list, plan, formulas, result) {
  const { settings, day } = plan.compute(formulas);
  const said = sayer(plan, formulas);
  const now = day.values[result];
  /** @type {HTMLElement} */ (document.querySelector("[data-matters-now]")).textContent = tell("matters_now", { title: titleOf(result), value: said(result, now, "both") });
  const sure = /** @type {HTMLElement} */ (document.querySelector("[data-matters-sure]"));
  sure.textContent = "";
  if (typeof now !== "number") return list.replaceChildren();
  const { needed } = neededFor(formulas, [result]);
  const ranges = Object.fromEntries(Object.entries(doubtful(formulas, settings)).filter(([id]) => needed.has(id)));
  const weights = weigh(ranges, (id) => along(formulas, settings, id, result), now);
  const { low, high } = likely(weights, now);
  sure.textContent = tell("matters_sure", { low: said(result, low), high: said(result, high) });
  list.replaceChildren(...weights.slice(0, MOST).map((weight) => matterRow(weight, weights[0].size, result, now, said)));
}

/** @param {import("./solving.js").Weight} weight @param {number} most @param {string} result @param {number} now @param {(id: string, value: number | undefined, part?: string) => string} said */
function matterRow({ id, from, to, less, more }, most, result, now, said) {
  const row = document.createElement("li");
  const title = Object.assign(document.createElement("strong"), { textContent: titleOf(id) });
  row.append(title);
  for (const [at, outcome] of /** @type {[number, number | undefined][]} */ ([[from, less], [to, more]])) {
    const line = Object.assign(document.createElement("span"), { className: "matters__line", textContent: `${said(id, at)} → ${said(result, outcome)}` });
    const bar = Object.assign(document.createElement("span"), { className: `matters__bar ${(outcome ?? now) < now ? "matters__bar--less" : ""}` });
    bar.style.width = `${(100 * Math.abs((outcome ?? now) - now)) / most}%`;
    row.append(line, bar);
  }
  return row;
}
