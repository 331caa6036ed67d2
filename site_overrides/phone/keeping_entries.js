// Puts readings, actions and corrections into the record of the day that is going on.

import { judge, limitFor } from "./judging.js";
import { kindOf } from "./reading_items.js";
import { readings } from "./readings.js";
import { frozenValues, runToWriteTo } from "./runs.js";

/**
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {import("./logging.js").Page} Page
 * @typedef {import("./log.js").Kept} Kept
 * @typedef {{value?: number, written?: string, lot?: string, name?: string, reason?: string, corrects?: string, at?: number, zone?: number}} Given
 */

/** @param {Page} page @param {string} of @param {import("./reading_items.js").Reading} item @param {Given} given @returns {Promise<Kept | null>} null where no day goes on */
export async function keepReading(page, of, item, given) {
  const run = await runFor(page, given.corrects, item.ahead);
  if (!run) return null;
  const lot = item.per_lot ? given.lot : undefined;
  const limit = limitFor(item, frozenValues(page.log, run), page.log.of(run).ends(), lot);
  const limits = kindOf(item) === "reading" && Object.keys(limit).length ? { limit } : {};
  const kept = await page.log.add(run, { kind: kindOf(item), of, ...given, lot, ...limits });
  await judgeAnew(page, run, of);
  return kept;
}

/** A correction stands in the run of what it corrects, and only in the run that goes on can anything be corrected. @param {Page} page @param {string} [corrects] @param {true} [isAhead] */
const runFor = (page, corrects, isAhead) => (corrects ? page.run() : runToWriteTo(page, isAhead));

/**
 * Where the time at which something began is written down late, corrected or taken back, readings that were judged by
 * another take their new limit as a correction; what stays outside its limits stays as it is, with what was done.
 * @param {Page} page @param {string} run @param {string} [began]
 */
async function judgeAnew({ log }, run, began) {
  const values = frozenValues(log, run);
  const anew = log.of(run).standing().flatMap((entry) => {
    const item = /** @type {Record<string, import("./reading_items.js").Reading>} */ (readings)[entry.of ?? ""];
    if (!item?.within || item.since !== began || entry.value === undefined) return [];
    const limit = limitFor(item, values, log.of(run).ends(), entry.lot);
    const [before, after] = [entry.limit, limit].map((each) => judge(Number(entry.value), each, entry.at));
    if (limit.by === entry.limit?.by || (before === after && ["low", "high"].includes(after))) return [];
    const { kind, of, lot, name, value, written, who, reason } = entry;
    return [{ kind, of, lot, name, value, written, who, reason, limit, ...placeOf(entry) }];
  });
  if (anew.length) await log.addAll(run, anew);
}

/** A correction tells of the time that the corrected entry told of. @param {Entry} [instead] */
export const placeOf = (instead) => (instead ? { corrects: instead.id, at: instead.at, zone: instead.zone } : {});

/** What was done about a reading outside its limits. @param {Page} page @param {Entry} entry @param {string} text @param {string} [reason] */
export const keepAction = (page, entry, text, reason) => page.log.add(entry.run, { kind: "action", answers: entry.id, text: text.slice(0, 500), reason });

/** Takes an entry back; it stays in the record as taken back. @param {Page} page @param {Entry} entry */
export async function takeBack(page, entry) {
  const { kind, of, lot, name, text, answers, value, written, who, reason } = entry;
  const same = { kind, of, lot, name, text, answers, value, written, reason, ...(kind === "sign" ? { who } : {}) };
  const kept = await page.log.add(entry.run, { ...same, corrects: entry.id, gone: true });
  await judgeAnew(page, entry.run, entry.of);
  return kept;
}

/** @param {Page} page @param {string} text @param {Entry} [instead] @returns {Promise<Kept | null>} */
export async function keepRemark(page, text, instead) {
  const run = await runFor(page, instead?.id);
  return run ? page.log.add(run, { kind: "remark", text, ...placeOf(instead) }) : null;
}
