/**
 * Finds the greatest or the least value of an input at which a result still stays on its side of a bound, and weighs
 * inputs by what they do to a result.
 *
 * @typedef {import("./settling.js").Input} Input
 * @typedef {(value: number) => number | undefined} Along
 */

const SCANS = 60;
const HALVINGS = 50;

/**
 * The range is first walked through, so that what goes up and down again is not taken for what only goes up; then the
 * step in which the answer lies is halved. Whole inputs stay whole.
 * @param {Along} along @param {Input} input @param {"most" | "least"} seek @param {(result: number) => boolean} fits
 * @returns {{value: number, edge: boolean} | null} null where no value fits; `edge` where the range ends before the answer
 */
export function solve(along, { low, high, whole }, seek, fits) {
  const ok = (/** @type {number} */ value) => {
    const result = along(value);
    return result !== undefined && fits(result);
  };
  const count = whole ? Math.min(SCANS, high - low) : SCANS;
  const places = Array.from({ length: count + 1 }, (_, place) => {
    const value = low + ((high - low) * place) / (count || 1);
    return whole ? Math.round(value) : value;
  });
  if (seek === "most") places.reverse();
  const first = places.findIndex(ok);
  if (first === -1) return null;
  if (first === 0) return { value: places[0], edge: true };
  let [good, bad] = [places[first], places[first - 1]];
  for (let round = 0; round < HALVINGS && (!whole || Math.abs(good - bad) > 1); round += 1) {
    const middle = whole ? Math.trunc((good + bad) / 2) : (good + bad) / 2;
    if (ok(middle)) good = middle;
    else bad = middle;
  }
  return { value: good, edge: false };
}

/** @typedef {{id: string, from: number, to: number, less: number | undefined, more: number | undefined, swing: number}} Weight */

/**
 * What each input does to a result when it goes down and up by a part of its range, the others as they are; the
 * strongest first.
 * @param {Record<string, Input>} inputs @param {Record<string, any>} settings @param {number} part
 * @param {(id: string) => Along} along @param {number} now the result as planned
 * @returns {Weight[]}
 */
export function weigh(inputs, settings, part, along, now) {
  return Object.entries(inputs).map(([id, { low, high, whole }]) => {
    const reach = whole ? Math.max(1, Math.round((high - low) * part)) : (high - low) * part;
    const [from, to] = [Math.max(low, settings[id] - reach), Math.min(high, settings[id] + reach)];
    const at = along(id);
    const [less, more] = [at(from), at(to)];
    const swing = Math.max(...[less, more].map((result) => Math.abs((result ?? now) - now)));
    return { id, from, to, less, more, swing };
  }).filter(({ swing, less, more }) => swing > 1e-9 * Math.abs(now) || less === undefined || more === undefined)
    .sort((one, other) => other.swing - one.swing);
}
