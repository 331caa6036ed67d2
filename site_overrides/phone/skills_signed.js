/**
 * Who has been signed off for what, told from the entries of all runs. Touches neither the page nor the store.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {{title: string, places: string[], lasts: number}} Skill  `lasts` in seconds, nought for good
 * @typedef {{entry: Entry, until: number}} Signed  `until` in milliseconds since 1970, Infinity for good
 */

import { standing } from "./records.js";

const TRAINING = "-training";

/** A run for signatures on a day without one; it is no day's work. @param {string} day */
export const trainingRun = (day) => day + TRAINING;

/** @param {string} run */
export const isTraining = (run) => run.endsWith(TRAINING);

/** The entries that sign a skill. @param {Entry[]} entries @param {Record<string, Skill>} skills */
export const signatures = (entries, skills) => standing(entries).filter(({ kind, of, name, who }) => kind === "sign" && of !== undefined && Object.hasOwn(skills, of) && Boolean(name) && Boolean(who));

/** The latest signature of a person for a skill. @param {Entry[]} signed @param {Record<string, Skill>} skills @param {string} person @param {string} skill @returns {Signed | undefined} */
export function signatureOf(signed, skills, person, skill) {
  const entry = signed.filter(({ of, name }) => of === skill && sameName(name ?? "", person)).at(-1);
  if (!entry) return undefined;
  const { lasts } = skills[skill];
  return { entry, until: lasts ? entry.at + lasts * 1000 : Infinity };
}

/** Skills that a place asks for and that a person has no signature for, or one that has run out. @param {Entry[]} signed @param {Record<string, Skill>} skills @param {string} person @param {string} procedure @param {number} now @returns {string[]} */
export function lacking(signed, skills, person, procedure, now) {
  return Object.keys(skills).filter((skill) => skills[skill].places.includes(procedure) && !((signatureOf(signed, skills, person, skill)?.until ?? 0) > now));
}

/** @param {string} one @param {string} other */
const sameName = (one, other) => one.trim().toLowerCase() === other.trim().toLowerCase();
