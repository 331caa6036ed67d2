// Names of the people of the day, and where each stands. Kept on the phone only.

/**
 * @typedef {import("./store.js").Store} Store
 * @typedef {{at: string, apart?: string, gone?: boolean}} Person  `at` is the id of a place, or empty; `apart` that of a place at another
 *   time of the day
 */

const PREFIX = "person/";

/** @param {string} crew @param {string} name */
export const keyOfPerson = (crew, name) => `${PREFIX}${crew}/${name}`;

/** Everyone of a crew by name: those whom the farm has written, and those added here. @param {Store} store @param {string} crew @param {string[]} written @returns {[string, Person][]} */
export function everyone(store, crew, written) {
  const prefix = keyOfPerson(crew, "");
  const kept = new Map(store.entries(prefix).map(([key, person]) => [key.slice(prefix.length), person]));
  const names = [...written, ...[...kept.keys()].filter((name) => !written.includes(name)).sort()];
  return names.map((name) => /** @type {[string, Person]} */ ([name, kept.get(name) ?? { at: "" }])).filter(([, { gone }]) => !gone);
}

/** The names of all who are here; who left a crew and stands in no other is not among them. @param {Store} store @param {string[]} written */
export function namesKnown(store, written) {
  const kept = store.entries(PREFIX).map(([key, { gone }]) => ({ name: key.split("/").slice(2).join("/"), left: Boolean(gone) }));
  const here = new Set(kept.filter(({ left }) => !left).map(({ name }) => name));
  const left = new Set(kept.filter((person) => person.left).map(({ name }) => name));
  return [...new Set([...written, ...here])].filter((name) => here.has(name) || !left.has(name));
}

/** The names at each place. @param {Store} store @param {string} crew @param {string[]} written @returns {Map<string, string[]>} */
export function placesOfPeople(store, crew, written) {
  const places = new Map();
  for (const [name, { at, apart }] of everyone(store, crew, written)) {
    for (const place of [at, apart]) if (place) places.set(place, [...(places.get(place) ?? []), name]);
  }
  return places;
}
