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

/** @typedef {{id: string, from: number, to: number, less: number | undefined, more: number | undefined, size: number}} Weight */

/**
 * Between what each doubtful value may truly lie, an input within its range. `doubts` holds how far to either side, and
 * whether that is a share of the value.
 * @param {{doubts: Record<string, any[]>, inputs: Record<string, Input>}} givens @param {Record<string, any>} settings
 * @returns {Record<string, [number, number]>}
 */
export function doubtful({ doubts, inputs }, settings) {
  return Object.fromEntries(Object.entries(doubts).map(([id, [reach, relative]]) => {
    const far = relative ? Math.abs(settings[id]) * reach : reach;
    const { low, high } = inputs[id] ?? { low: -Infinity, high: Infinity };
    return [id, [Math.max(settings[id] - far, low), Math.min(settings[id] + far, high)]];
  }));
}

/**
 * What each of some values does to a result when it goes to either end of its range, the others as they are; the
 * strongest first. `generator/computing/spreading.py` does the same.
 * @param {Record<string, [number, number]>} ranges @param {(id: string) => Along} along @param {number} now the result as planned
 * @returns {Weight[]}
 */
export function weigh(ranges, along, now) {
  const weights = Object.entries(ranges).map(([id, [from, to]]) => {
    const at = along(id);
    const [less, more] = [at(from), at(to)];
    const [least, most] = endsOf({ less, more }, now);
    return { id, from, to, less, more, size: most - least };
  });
  return weights.filter(({ size }) => size > 0).sort((one, other) => other.size - one.size);
}

/** Where the result most likely lies, the doubts taken as independent: the root of the sum of squares, up and down apart. @param {Weight[]} weights @param {number} now */
export function likely(weights, now) {
  const ends = weights.map((weight) => endsOf(weight, now));
  return { low: now - Math.hypot(...ends.map(([least]) => now - least)), high: now + Math.hypot(...ends.map(([, most]) => most - now)) };
}

/** @param {{less: number | undefined, more: number | undefined}} weight @param {number} now */
function endsOf({ less, more }, now) {
  const ends = [now, less ?? now, more ?? now];
  return [Math.min(...ends), Math.max(...ends)];
}
