// Who stands where: what each place does in an hour, which one holds up the rest, and the best split in one tap.

import { hide, watchWhileShown, write } from "./changing.js";
import { mountPeople } from "./crew_people.js";
import { everyone, placesOfPeople } from "./people.js";
import { crews, people } from "./plan_content.js";
import { follow, sayer, tell } from "./plan_words.js";

/**
 * @typedef {import("./plan_state.js").Plan} Plan
 * @typedef {import("./plan_state.js").Outcome} Outcome
 * @typedef {{title: string, people: string, best: string, more?: string, rates: string[], procedure?: string, also?: string[], apart?: boolean}} Standing
 * @typedef {{people: string, places: Record<string, Standing>}} Crew
 */

/** @param {{store: import("./store.js").Store, plan: Plan}} page @param {HTMLElement} form */
export function mountCrew({ store, plan }, form) {
  const id = form.dataset.crew ?? "";
  const crew = crews[id];
  follow(plan, form, (formulas) => paintCrew(form, crew, plan, plan.compute(formulas)));
  bindBest(form, crew, plan);
  const section = /** @type {HTMLElement | null} */ (document.querySelector(`[data-people="${id}"]`));
  if (!section) return;
  mountPeople(store, section);
  const paint = () => paintNames(store, id, form, section, crew, plan);
  paint();
  watchWhileShown(store, form, paint, /^person\//);
}

/** The rate of each place: that of its slowest part; undefined where one is refused. @param {Crew} crew @param {Record<string, any>} values */
export function ratesOf(crew, values) {
  return Object.fromEntries(Object.entries(crew.places).map(([name, { rates }]) => {
    const known = rates.map((id) => values[id]);
    return [name, known.includes(undefined) ? undefined : Math.min(...known)];
  }));
}

/** The places that hold up the rest; none where all are as fast. @param {Crew} crew @param {Record<string, number | undefined>} rates */
export function slowestOf(crew, rates) {
  const together = Object.keys(crew.places).filter((name) => !crew.places[name].apart && rates[name] !== undefined);
  const least = Math.min(...together.map((name) => Number(rates[name])));
  const slow = together.filter((name) => Number(rates[name]) <= least * (1 + 1e-9));
  return new Set(slow.length < together.length ? slow : []);
}

/** @param {HTMLElement} form @param {Crew} crew @param {Plan} plan @param {Outcome} outcome */
function paintCrew(form, crew, plan, { formulas, settings, day }) {
  const said = sayer(plan, formulas);
  const rates = ratesOf(crew, day.values);
  const slowest = slowestOf(crew, rates);
  for (const [name, place] of Object.entries(crew.places)) {
    const field = part(form, `[data-place="${name}"]`);
    write(part(field, "[data-rate]"), said(place.rates[0], rates[name]));
    write(part(field, "[data-rate-second]"), rates[name] === undefined ? "" : said(place.rates[0], rates[name], "second"));
    hide(part(field, "[data-slowest]"), !slowest.has(name));
    field.classList.toggle("place--slowest", slowest.has(name));
  }
  const placed = Object.values(crew.places).filter(({ apart }) => !apart).reduce((sum, { people }) => sum + Number(settings[people]), 0);
  const all = Number(settings[crew.people]);
  const [id, spare] = [Object.values(crew.places)[0].people, Math.abs(all - placed)];
  const count = (/** @type {number} */ people) => said(Number.isInteger(people) ? crew.people : id, people);
  const words = spare < 1e-9 ? "crew_sum_even" : placed > all ? "crew_sum_over" : "crew_sum_spare";
  write(part(form, "[data-crew-sum]"), tell(words, { placed: count(placed), all: count(all), spare: count(spare) }));
  part(form, "[data-best]").disabled = Object.keys(bestSplit(crew, formulas, settings, day.values)).length === 0;
  const where = document.querySelector("[data-more-where]");
  if (where) write(where, moreWords(crew, day.values));
}

/** @param {HTMLElement} element @param {string} name @returns {any} */
const part = (element, name) => element.querySelector(name);

/** What has to be changed for the best split. @param {Crew} crew @param {import("./plan_state.js").Formulas} formulas @param {Record<string, any>} settings @param {Record<string, any>} values */
function bestSplit(crew, { inputs }, settings, values) {
  const wanted = Object.values(crew.places).filter(({ best }) => values[best] !== undefined).map(({ people, best }) => {
    const { low, high } = inputs[people];
    return [people, Math.min(high, Math.max(low, values[best]))];
  });
  return Object.fromEntries(wanted.filter(([people, value]) => Math.abs(settings[people] - Number(value)) > 1e-9));
}

/** @param {HTMLElement} form @param {Crew} crew @param {Plan} plan */
function bindBest(form, crew, plan) {
  const undo = part(form, "[data-best-undo]");
  part(form, "[data-best]").addEventListener("click", async () => {
    const { formulas, settings, day } = plan.compute(await plan.load());
    const [wanted, before] = [bestSplit(crew, formulas, settings, day.values), plan.changes()];
    plan.setAll(changesFor(plan, formulas, wanted));
    undo.hidden = false;
    undo.onclick = () => {
      undo.hidden = true;
      plan.setAll(Object.fromEntries(Object.keys(wanted).map((id) => [id, before[id]])));
    };
  });
}

/** What as many people are for changes: none where the plan has them of itself. @param {Plan} plan @param {import("./plan_state.js").Formulas} formulas @param {Record<string, number>} wanted */
function changesFor(plan, formulas, wanted) {
  const { defaults } = plan.compute(formulas);
  return Object.fromEntries(Object.entries(wanted).map(([id, many]) => [id, many === defaults[id] ? undefined : many]));
}

/** Where one person more would stand. @param {Crew} crew @param {Record<string, any>} values */
function moreWords(crew, values) {
  const gaining = Object.values(crew.places).filter(({ best, more }) => more && values[more] > values[best] + 1e-9);
  return gaining.length ? tell("crew_more_at", { places: gaining.map(({ title }) => title).join(", ") }) : tell("crew_more_nowhere");
}

/** @param {import("./store.js").Store} store @param {string} id @param {HTMLElement} form @param {HTMLElement} section @param {Crew} crew @param {Plan} plan */
function paintNames(store, id, form, section, crew, plan) {
  const places = placesOfPeople(store, id, people);
  for (const name of Object.keys(crew.places)) {
    part(form, `[data-place="${name}"] [data-names]`).textContent = (places.get(name) ?? (places.size ? [tell("crew_nobody")] : [])).join(", ");
  }
  const count = part(section, "[data-count-names]");
  count.hidden = places.size === 0;
  count.onclick = async () => {
    const formulas = await plan.load();
    const within = (/** @type {string} */ input, /** @type {number} */ many) => /** @type {[string, number]} */ ([input, Math.min(many, formulas.inputs[input].high)]);
    const standing = [...places].filter(([name]) => name in crew.places).map(([name, names]) => within(crew.places[name].people, names.length));
    const counted = [within(crew.people, everyone(store, id, people).length), ...standing];
    plan.setAll(changesFor(plan, formulas, Object.fromEntries(counted)));
  };
}
