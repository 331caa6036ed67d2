// Lots of a day: what was brought in and is followed together. Named freely, numbered where nobody names them.

import { keyOfLot, openRun } from "./runs.js";

/** @typedef {import("./logging.js").Page} Page */

const FIRST = "1";

/** The lot that is worked on. @param {Page} page @returns {string} */
export const currentLot = ({ store }) => store.get(keyOfLot(openRun(store))) ?? FIRST;

/** @param {Page} page @param {string} lot */
export const setLot = ({ store }, lot) => store.put(keyOfLot(openRun(store)), lot);

/** Every lot of the day so far. @param {Page} page @returns {string[]} */
export function knownLots(page) {
  const used = page.log.of(openRun(page.store)).ends().filter(({ kind }) => kind !== "list" && kind !== "timer").flatMap(({ lot }) => lot ?? []);
  return [...new Set([FIRST, ...used, currentLot(page)])].sort((one, other) => one.localeCompare(other, undefined, { numeric: true }));
}

/** The name that a new lot has where nobody gives one. @param {string[]} lots */
export const nextLot = (lots) => String(1 + Math.max(0, ...lots.map((lot) => Number(lot) || 0)));
