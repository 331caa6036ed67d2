// The list of a crew's people on its page: who is added, who leaves, and where each stands.

import { everyone, keyOfPerson } from "./people.js";
import { people } from "./plan_content.js";
import { tell } from "./plan_words.js";
import { watchWhileShown } from "./ticks.js";
import { tidy } from "./typed_text.js";

/** @typedef {import("./store.js").Store} Store */

/** @param {Store} store @param {HTMLElement} section */
export function mountPeople(store, section) {
  const crew = section.dataset.people ?? "";
  const form = /** @type {HTMLFormElement} */ (section.querySelector("[data-people-add]"));
  const field = /** @type {HTMLInputElement} */ (form.querySelector("input"));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const name = tidy(field.value, 30);
    if (name) store.put(keyOfPerson(crew, name), { at: store.get(keyOfPerson(crew, name))?.at ?? "" });
    field.value = "";
    field.focus();
  });
  const paint = () => paintPeople(store, crew, section);
  paint();
  watchWhileShown(store, section, paint, /^person\//);
}

/** @param {Store} store @param {string} crew @param {HTMLElement} section */
function paintPeople(store, crew, section) {
  const list = /** @type {HTMLElement} */ (section.querySelector("[data-people-list]"));
  const template = /** @type {HTMLTemplateElement} */ (section.querySelector("[data-person-row]"));
  const rows = new Map([...list.children].map((row) => [/** @type {HTMLElement} */ (row).dataset.person, /** @type {HTMLElement} */ (row)]));
  list.replaceChildren(...everyone(store, crew, people).map(([name, person]) => {
    const row = rows.get(name) ?? makeRow(template, store, keyOfPerson(crew, name), name);
    /** @type {HTMLSelectElement} */ (row.querySelector("select")).value = person.at;
    return row;
  }));
}

/** @param {HTMLTemplateElement} template @param {Store} store @param {string} key @param {string} name */
function makeRow(template, store, key, name) {
  const row = /** @type {HTMLElement} */ (/** @type {DocumentFragment} */ (template.content.cloneNode(true)).firstElementChild);
  const leave = /** @type {HTMLElement} */ (row.querySelector("[data-leave]"));
  const place = /** @type {HTMLSelectElement} */ (row.querySelector("select"));
  row.dataset.person = name;
  /** @type {HTMLElement} */ (row.querySelector("[data-name]")).textContent = name;
  place.addEventListener("change", () => store.put(key, { at: place.value }));
  leave.setAttribute("aria-label", tell("crew_leave_name", { name }));
  leave.addEventListener("click", () => store.put(key, { at: "", gone: true }));
  return row;
}
