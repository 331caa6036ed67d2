/**
 * When a question is asked again: each right answer moves it to a box that waits longer, a wrong one back to the first.
 * Touches neither the page nor the clock nor the store.
 *
 * @typedef {{box: number, due: number, right: number, wrong: number}} Card  `due` in milliseconds since 1970
 */

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/** How long each box waits. The first is for what was wrong: a few questions later it comes again. */
export const WAITS = [2 * MINUTE, 20 * MINUTE, DAY, 3 * DAY, 7 * DAY, 21 * DAY];

/** @param {Card | undefined} card @param {boolean} wasRight @param {number} now @returns {Card} */
export function answered(card, wasRight, now) {
  const { box, right, wrong } = card ?? { box: 0, right: 0, wrong: 0 };
  const next = wasRight ? Math.min(box + 1, WAITS.length - 1) : 0;
  return { box: next, due: now + WAITS[next], right: right + Number(wasRight), wrong: wrong + Number(!wasRight) };
}

/**
 * The next question of a deck: what is due, the longest due first; else one never asked; else nothing.
 * @param {string[]} deck @param {(id: string) => Card | undefined} cardOf @param {number} now @param {string} last  is not asked twice in a row
 * @returns {string | undefined}
 */
export function next(deck, cardOf, now, last) {
  const others = deck.length > 1 ? deck.filter((id) => id !== last) : deck;
  const due = others.filter((id) => (cardOf(id)?.due ?? Infinity) <= now);
  due.sort((one, other) => Number(cardOf(one)?.due) - Number(cardOf(other)?.due));
  return due[0] ?? others.find((id) => !cardOf(id));
}

/** How many of a deck were right the last time they were asked. @param {string[]} deck @param {(id: string) => Card | undefined} cardOf */
export const known = (deck, cardOf) => deck.filter((id) => Number(cardOf(id)?.box) > 0).length;
