/**
 * Records brought together. A merge is the union of entries, so that any order, any repetition and any part of it
 * gives the same in the end and nothing is lost or doubled.
 *
 * @typedef {import("./records.js").Entry} Entry
 * @typedef {{phone: string, other: string, seconds: number, sure: boolean}} Offset  the other clock is ahead by so much
 */

import { canonical, clockOf, counterOf, inOrder, phoneOf } from "./records.js";

const MINUTE = 60;

/** All entries of all lists, each once, in order. @param {...Entry[]} lists @returns {Entry[]} */
export function merge(...lists) {
  return inOrder([...new Map(lists.flat().map((entry) => [canonical(entry), entry])).values()]);
}

/** The entries of theirs that mine lacks. @param {Entry[]} mine @param {Entry[]} theirs @returns {Entry[]} */
export function news(mine, theirs) {
  const known = new Set(mine.map(canonical));
  return merge(theirs).filter((entry) => !known.has(canonical(entry)));
}

/** Identities under which two entries say different things: both are kept, and a person looks. @param {Entry[]} entries */
export function clashes(entries) {
  /** @type {Map<string, number>} */ const counts = new Map();
  for (const { id } of merge(entries)) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].filter(([, count]) => count > 1).map(([id]) => id).sort();
}

/**
 * By how much clocks differ, told from the merges of a record. Where two phones took in each other's files, the time on
 * the way cancels out. Where only one did, all that is sure is that a file cannot arrive before it was sent.
 * @param {Entry[]} entries @returns {Offset[]} more than a minute only
 */
export function clockOffsets(entries) {
  /** @type {Map<string, number>} */ const gaps = new Map();
  for (const entry of inOrder(entries)) {
    if (entry.kind !== "merge" || !entry.phone || entry.sent === undefined) continue;
    const pair = `${phoneOf(entry)} ${entry.phone}`;
    gaps.set(pair, Math.min(gaps.get(pair) ?? Infinity, (entry.at - entry.sent) / 1000));
  }
  /** @type {Offset[]} */ const found = [];
  for (const [pair, gap] of [...gaps].sort()) {
    const [phone, other] = pair.split(" ");
    const back = gaps.get(`${other} ${phone}`);
    if (back !== undefined && phone > other) continue;
    const seconds = back === undefined ? -gap : (back - gap) / 2;
    if (Math.abs(seconds) > MINUTE && (back !== undefined || gap < 0)) found.push({ phone, other, seconds, sure: back !== undefined });
  }
  return found;
}

/**
 * What to tell when a file has just come straight from another phone: how many seconds its clock is ahead (negative:
 * behind, or the file was some time on the way); nought within a minute.
 * @param {number} sent @param {number} now
 */
export function aheadBy(sent, now) {
  const seconds = (sent - now) / 1000;
  return Math.abs(seconds) > MINUTE ? seconds : 0;
}

/** Entries of one phone whose clock was set back before them. @param {Entry[]} entries @returns {Entry[]} */
export function setBack(entries) {
  /** @type {Map<string, number>} */ const latest = new Map();
  return inOrder(entries).sort((one, other) => counterOf(one) - counterOf(other)).filter((entry) => {
    const before = latest.get(phoneOf(entry)) ?? 0;
    latest.set(phoneOf(entry), Math.max(before, clockOf(entry)));
    return clockOf(entry) < before - MINUTE * 1000;
  });
}
