// What was begun and not ended, lot by lot.

import { isOver } from "./judging.js";

/** @typedef {import("./records.js").Entry} Entry @typedef {{of: string, lot: string}} Lacking  what would have ended it */

/**
 * A lot is ended as a whole, or name by name, once everything that was read in it under a name is.
 * @param {Record<string, import("./judging.js").Item>} items @param {Entry[]} entries  those that count @returns {Lacking[]}
 */
export function unended(items, entries) {
  /** @type {Map<string, Lacking>} */ const found = new Map();
  for (const [of, { since, until, per_lot }] of Object.entries(items)) {
    if (!since || !until || !per_lot) continue;
    for (const { lot = "" } of entries.filter((entry) => entry.of === since)) {
      const mine = entries.filter((entry) => (entry.lot ?? "") === lot);
      if (!isEnded(until, mine, mine.filter((entry) => entry.of === of && entry.name))) found.set(`${until[0]} ${lot}`, { of: until[0], lot });
    }
  }
  return [...found.values()];
}

/** @param {string[]} until @param {Entry[]} entries  of the lot @param {Entry[]} named */
function isEnded(until, entries, named) {
  const ends = entries.filter(({ of = "" }) => until.includes(of));
  return ends.some(({ name }) => name === undefined) || (ends.length > 0 && named.every((entry) => isOver(entry, ends, entries)));
}
