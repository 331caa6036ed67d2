// A run is one day's work. Ticks belong to it; a new day begins a new run and leaves the old one as it is.

/**
 * @typedef {import("./store.js").Store} Store
 * @typedef {{begun: number}} Run
 */

/** The id of the run that is going on; empty before the first. @param {Store} store @returns {string} */
export const currentRun = (store) => store.get("state/run") ?? "";

/** @param {Store} store @param {string} id @returns {Run | undefined} */
export const runOf = (store, id) => store.get(`run/${id}`);

/** @param {Store} store @returns {[string, Run][]} newest first */
export function allRuns(store) {
  const runs = store.entries("run/").map(([key, run]) => /** @type {[string, Run]} */ ([key.slice(4), run]));
  return runs.sort(([, one], [, other]) => other.begun - one.begun);
}

/** Begins a run and makes it the current one. @param {Store} store @returns {Promise<string>} */
export async function beginRun(store) {
  const now = new Date();
  const id = `${dayName(now)}-${crypto.getRandomValues(new Uint32Array(1))[0].toString(36)}`;
  await Promise.all([store.put(`run/${id}`, { begun: now.getTime() }), store.put("state/run", id)]);
  return id;
}

/** Year, month and day as the phone's clock has them. @param {Date} when */
export function dayName(when) {
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}`;
}

/** @param {Store} store @param {string} run @param {string} list */
export function ticksOf(store, run, list) {
  const prefix = `tick/${run}/${list}/`;
  return new Map(store.entries(prefix).map(([key, tick]) => [key.slice(prefix.length), tick]));
}
