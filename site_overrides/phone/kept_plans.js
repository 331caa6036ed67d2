// Plans kept by name on this phone, beside those that the farm has written.

import { watchWhileShown } from "./changing.js";
import { loaded } from "./paint.js";
import { neededFor } from "./part_of_day.js";
import { farmPlans, planSays } from "./plan_content.js";
import { sayer, tell, withValues } from "./plan_words.js";
import { computeOn } from "./running.js";
import { tidy } from "./typed_text.js";
import { offerUndo, replacePlan } from "./undoing.js";
import { date } from "./words_said.js";

/**
 * @typedef {{name: string, at: number, changes: Record<string, import("./plan_state.js").Value>}} Kept
 * @typedef {import("./store.js").Store} Store
 * @typedef {import("./plan_state.js").Plan} Plan
 */

const PREFIX = "kept/";
const NAME = "setting/plan_name";
const LONGEST = 40;

/** @param {{store: Store, plan: Plan}} page @param {HTMLElement} section */
export async function mountKeptPlans({ store, plan }, section) {
  const form = /** @type {HTMLFormElement} */ (section.querySelector("[data-keep]"));
  const field = /** @type {HTMLInputElement} */ (form.querySelector("input"));
  field.value = nameOfPlan(store);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const name = tidy(field.value, LONGEST);
    if (name) keepNow(store, plan, section, name);
    else field.focus();
  });
  const plainly = tellerOf(plan, await loaded(plan));
  const paint = () => paintList(store, plan, section, field, plainly);
  paint();
  watchWhileShown(store, section, paint, /^kept\/|^setting\/units$/);
}

/** Keeps today's plan. Where one of that name is there it takes its place, and can be had back. @param {Store} store @param {Plan} plan @param {HTMLElement} section @param {string} name */
function keepNow(store, plan, section, name) {
  const [old, before] = [all(store).find(([, kept]) => kept.name === name), nameOfPlan(store)];
  keep(store, old?.[0] ?? newKey(), { name, changes: plan.changes(), at: Date.now() });
  setNameOfPlan(store, name);
  const undo = /** @type {HTMLElement} */ (section.querySelector("[data-kept-undo]"));
  undo.hidden = true;
  if (!old) return;
  offerUndo(undo, tell("kept_over", { name }), () => {
    keep(store, ...old);
    setNameOfPlan(store, before);
  });
}

/**
 * What a plan with those changes is, in the words that the front page has for today's.
 * @param {Plan} plan @param {import("./plan_state.js").Formulas} formulas @returns {(changes: Kept["changes"]) => string}
 */
function tellerOf(plan, formulas) {
  const { steps } = neededFor(formulas, [...planSays.matchAll(/\{([a-z0-9_]+)/g)].map(([, id]) => id));
  return (changes) => withValues(planSays, computeOn({ steps, uses: formulas.uses, watches: {} }, formulas.settle(changes)).values, sayer(plan, formulas));
}

/** What today's plan was last kept or received as. @param {Store} store @returns {string} */
export const nameOfPlan = (store) => store.get(NAME) ?? "";

/** @param {Store} store @param {string} name */
export const setNameOfPlan = (store, name) => store.put(NAME, name);

/** @param {Store} store @param {string} key @param {Kept} kept */
const keep = (store, key, kept) => store.put(PREFIX + key, kept);

const newKey = () => `${Date.now().toString(36)}-${crypto.getRandomValues(new Uint32Array(1))[0].toString(36)}`;

/** @param {Store} store @returns {[string, Kept][]} */
function all(store) {
  const rows = store.entries(PREFIX).map(([key, kept]) => /** @type {[string, Kept]} */ ([key.slice(PREFIX.length), kept]));
  return rows.sort(([, one], [, other]) => one.name.localeCompare(other.name));
}

/** @param {Store} store @param {string} name */
const sameName = (store, name) => all(store).some(([, kept]) => kept.name === name);

/** What a copy is called: nothing else is, and a long name is cut so that what tells it apart is there. @param {Store} store @param {string} name */
function freeName(store, name) {
  const called = (/** @type {string} */ base, /** @type {number} */ count) => tell("kept_copy_name", { name: base }) + (count > 1 ? ` ${count}` : "");
  for (let count = 1; ; count += 1) {
    const free = called(tidy(name, LONGEST - called("", count).length), count);
    if (!sameName(store, free)) return free;
  }
}

/** @param {Store} store @param {Plan} plan @param {HTMLElement} section @param {HTMLInputElement} field @param {(changes: Kept["changes"]) => string} plainly */
function paintList(store, plan, section, field, plainly) {
  const undo = /** @type {HTMLElement} */ (section.querySelector("[data-kept-undo]"));
  const row = /** @type {HTMLTemplateElement} */ (section.querySelector("[data-kept-row]"));
  const use = (/** @type {string} */ name, /** @type {Kept["changes"]} */ changes) => {
    const [back, before] = [replacePlan(plan, changes), nameOfPlan(store)];
    store.put(NAME, name);
    field.value = name;
    offerUndo(undo, tell("kept_used", { name }), () => {
      back();
      store.put(NAME, before);
      field.value = before;
    });
  };
  const own = all(store).map(([key, kept]) => {
    const about = tell("kept_about", { plan: plainly(kept.changes), day: date(kept.at), count: Object.keys(kept.changes).length });
    return fill(row, kept.name, about, {
      use: () => use(kept.name, kept.changes),
      copy: () => keep(store, newKey(), { ...kept, name: freeName(store, kept.name), at: Date.now() }),
      rename: () => rename(store, key, kept),
      delete: () => {
        store.remove(PREFIX + key);
        offerUndo(undo, tell("kept_deleted", { name: kept.name }), () => keep(store, key, kept));
      },
    });
  });
  const farm = farmPlans.map(({ title, changes }) => fill(row, title, tell("kept_farm", { plan: plainly(changes) }), { use: () => use(title, changes) }));
  /** @type {HTMLElement} */ (section.querySelector("[data-kept-list]")).replaceChildren(...own, ...farm);
}

/** @param {Store} store @param {string} key @param {Kept} kept */
function rename(store, key, kept) {
  const name = tidy(prompt(tell("kept_rename_ask"), kept.name) ?? "", LONGEST);
  if (!name || name === kept.name) return;
  if (sameName(store, name)) return alert(tell("kept_taken", { name }));
  keep(store, key, { ...kept, name });
}

/** @param {HTMLTemplateElement} template @param {string} name @param {string} about @param {Record<string, () => void>} acts */
function fill(template, name, about, acts) {
  const row = /** @type {HTMLElement} */ (/** @type {DocumentFragment} */ (template.content.cloneNode(true)).firstElementChild);
  /** @type {HTMLElement} */ (row.querySelector("[data-name]")).textContent = name;
  /** @type {HTMLElement} */ (row.querySelector("[data-about]")).textContent = about;
  for (const act of ["use", "copy", "rename", "delete"]) {
    const button = /** @type {HTMLButtonElement} */ (row.querySelector(`[data-${act}]`));
    if (!acts[act]) button.remove();
    else {
      button.addEventListener("click", acts[act]);
      button.setAttribute("aria-label", `${button.textContent} ${name}`);
    }
  }
  return row;
}
