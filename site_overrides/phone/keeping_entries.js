// Puts readings, actions and corrections into the record of the day that is going on.

import { limitFor } from "./judging.js";
import { kindOf } from "./reading_items.js";
import { frozenValues, runToWriteTo } from "./runs.js";

/**
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./logging.js").Page} Page
 * @typedef {import("./log.js").Kept} Kept
 * @typedef {{value?: number, written?: string, lot?: string, name?: string, reason?: string, corrects?: string, at?: number, zone?: number}} Given
 */

/** @param {Page} page @param {string} of @param {import("./reading_items.js").Reading} item @param {Given} given @returns {Promise<Kept | null>} null where no day goes on */
export async function keepReading(page, of, item, given) {
  const run = await runToWriteTo(page);
  if (!run) return null;
  const lot = item.per_lot ? given.lot : undefined;
  const limit = limitFor(item, frozenValues(page.log, run), page.log.of(run).ends(), lot);
  const limits = kindOf(item) === "reading" && Object.keys(limit).length ? { limit } : {};
  return page.log.add(run, { kind: kindOf(item), of, ...given, lot, ...limits });
}

/** A correction tells of the time that the corrected entry told of. @param {Entry} [instead] */
export const placeOf = (instead) => (instead ? { corrects: instead.id, at: instead.at, zone: instead.zone } : {});

/** What was done about a reading outside its limits. @param {Page} page @param {Entry} entry @param {string} text @param {string} [reason] */
export const keepAction = (page, entry, text, reason) => page.log.add(entry.run, { kind: "action", answers: entry.id, text: text.slice(0, 500), reason });

/** Takes an entry back; it stays in the record as taken back. @param {Page} page @param {Entry} entry */
export function takeBack(page, entry) {
  const { kind, of, lot, name, text, answers, value, written, who, reason } = entry;
  const same = { kind, of, lot, name, text, answers, value, written, reason, ...(kind === "sign" ? { who } : {}) };
  return page.log.add(entry.run, { ...same, corrects: entry.id, gone: true });
}

/** @param {Page} page @param {string} text @param {Entry} [instead] @returns {Promise<Kept | null>} */
export async function keepRemark(page, text, instead) {
  const run = await runToWriteTo(page);
  return run ? page.log.add(run, { kind: "remark", text, ...placeOf(instead) }) : null;
}
