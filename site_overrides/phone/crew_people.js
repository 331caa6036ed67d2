// The list of a crew's people on its page: who is added, who leaves, and where each stands.

import { watchWhileShown } from "./changing.js";
import { everyone, keyOfPerson } from "./people.js";
import { people } from "./plan_content.js";
import { tell } from "./plan_words.js";
import { offerUndo } from "./undoing.js";
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
    if (name) store.put(keyOfPerson(crew, name), { at: "", ...store.get(keyOfPerson(crew, name)), gone: false });
    field.value = "";
    field.focus();
  });
  const paint = () => paintPeople(store, crew, section);
  paint();
  watchWhileShown(store, section, paint, /^person\//);
}

/** Who left can be brought back where they stood. @param {Store} store @param {string} crew @param {HTMLElement} section */
function paintPeople(store, crew, section) {
  const list = /** @type {HTMLElement} */ (section.querySelector("[data-people-list]"));
  const left = /** @type {HTMLElement} */ (section.querySelector("[data-left]"));
  const template = /** @type {HTMLTemplateElement} */ (section.querySelector("[data-person-row]"));
  const rows = new Map([...list.children].map((row) => [/** @type {HTMLElement} */ (row).dataset.person, /** @type {HTMLElement} */ (row)]));
  const here = everyone(store, crew, people).map(([name, person]) => {
    const row = rows.get(name) ?? makeRow(template, left, store, keyOfPerson(crew, name), name);
    for (const place of selectsOf(row)) place.value = [person.at, person.apart].find((id) => id && [...place.options].some(({ value }) => value === id)) ?? "";
    return row;
  });
  list.replaceChildren(...here.slice(0, Number(left.dataset.place)), left, ...here.slice(Number(left.dataset.place)));
}

/** @param {HTMLElement} row @returns {HTMLSelectElement[]} */
const selectsOf = (row) => [...row.querySelectorAll("select")];

/** @param {HTMLTemplateElement} template @param {HTMLElement} left @param {Store} store @param {string} key @param {string} name */
function makeRow(template, left, store, key, name) {
  const row = /** @type {HTMLElement} */ (/** @type {DocumentFragment} */ (template.content.cloneNode(true)).firstElementChild);
  const leave = /** @type {HTMLElement} */ (row.querySelector("[data-leave]"));
  row.dataset.person = name;
  /** @type {HTMLElement} */ (row.querySelector("[data-name]")).textContent = name;
  for (const place of selectsOf(row)) {
    place.addEventListener("change", () => store.put(key, Object.fromEntries(selectsOf(row).map(({ dataset, value }) => [dataset.at, value]))));
  }
  leave.setAttribute("aria-label", tell("crew_leave_name", { name }));
  leave.addEventListener("click", () => {
    const before = store.get(key);
    left.dataset.place = String([.../** @type {HTMLElement} */ (row.parentElement).children].filter((other) => other !== left).indexOf(row));
    store.put(key, { at: "", gone: true });
    offerUndo(left, tell("crew_leave_name", { name }), () => void (before ? store.put(key, before) : store.remove(key)));
  });
  return row;
}
