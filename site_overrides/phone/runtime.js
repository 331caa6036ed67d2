/**
 * What printed formulas call. `generator/formula/runtime.py` is the same, function for function.
 *
 * Whatever has no number (a division by zero, the root of a negative, a place outside a table) throws NotANumber, so
 * that the quantity is refused by name instead of passing something odd on.
 *
 * @typedef {{axes: number[][], values: any[], hold: boolean}} Table
 */

const NODES = [0.0, 0.5384693101056831, -0.5384693101056831, 0.906179845938664, -0.906179845938664];
const WEIGHTS = [
  0.5688888888888889, 0.47862867049936647, 0.47862867049936647, 0.23692688505618908, 0.23692688505618908,
];
const PANELS = 16;
const BISECTIONS = 60;

export class NotANumber extends Error {}

export const { abs, min, max } = Math;

/** The number itself, where it is one. @param {number} number */
export function finite(number) {
  if (!Number.isFinite(number)) throw new NotANumber("not a number");
  return number;
}

/** One number divided by another. @param {number} above @param {number} below */
export function over(above, below) {
  if (below === 0) throw new NotANumber("division by zero");
  return above / below;
}

/** A number to a fixed power. @param {number} base @param {number} exponent */
export function power(base, exponent) {
  if (base < 0 && exponent !== Math.floor(exponent)) throw new NotANumber("root of a negative number");
  return finite(base ** exponent);
}

/** The number e to a power. @param {number} number */
export function exp(number) {
  return finite(Math.exp(number));
}

/** The natural logarithm. @param {number} number */
export function log(number) {
  if (number <= 0) throw new NotANumber("logarithm of nothing");
  return Math.log(number);
}

/** The square root. @param {number} number */
export function sqrt(number) {
  if (number < 0) throw new NotANumber("root of a negative number");
  return Math.sqrt(number);
}

/** Round up, but not because of a last digit that a change of unit left behind. @param {number} number */
export function ceil(number) {
  return Math.ceil(finite(number - 1e-9 * Math.max(1, Math.abs(number)))) + 0.0;
}

/** Round down, with the same patience. @param {number} number */
export function floor(number) {
  return Math.floor(finite(number + 1e-9 * Math.max(1, Math.abs(number)))) + 0.0;
}

/** Round to the nearest whole number, halves up. @param {number} number */
export function round(number) {
  return Math.floor(finite(number + 0.5)) + 0.0;
}

/**
 * Read a table of one or two axes by straight lines.
 * @param {Table} table @param {number} first @param {number} [second]
 */
export function lookup(table, first, second) {
  const [row, share] = position(table.axes[0], first, table.hold);
  if (second === undefined) return between(table.values[row], table.values[row + 1], share);
  const [column, part] = position(table.axes[1], second, table.hold);
  const [above, below] = [table.values[row], table.values[row + 1]];
  const one = between(above[column], above[column + 1], part);
  return between(one, between(below[column], below[column + 1], part), share);
}

/**
 * The interval a place lies in, and how far along.
 * @param {number[]} points @param {number} at @param {boolean} hold
 */
function position(points, at, hold) {
  const last = points.length - 1;
  const slack = 1e-9 * (points[last] - points[0]);
  if (!hold && (at < points[0] - slack || at > points[last] + slack)) throw new NotANumber("outside the table");
  const inside = Math.min(Math.max(at, points[0]), points[last]);
  let index = 0;
  while (index < last - 1 && inside > points[index + 1]) index += 1;
  return [index, (inside - points[index]) / (points[index + 1] - points[index])];
}

/** @param {number} one @param {number} other @param {number} share */
function between(one, other, share) {
  return one + (other - one) * share;
}

/**
 * The definite integral, by Gauss and Legendre's five points in each of 16 panels.
 * @param {(at: number) => number} body @param {number} low @param {number} high
 */
export function integral(body, low, high) {
  const step = (high - low) / PANELS;
  let total = 0.0;
  for (let panel = 0; panel < PANELS; panel += 1) {
    const middle = low + (panel + 0.5) * step;
    for (let node = 0; node < 5; node += 1) total += WEIGHTS[node] * body(middle + (NODES[node] * step) / 2);
  }
  return finite((total * step) / 2);
}

/**
 * Where the body changes its sign between low and high, by halving; there must be such a place.
 * @param {(at: number) => number} body @param {number} low @param {number} high
 */
export function root(body, low, high) {
  const [atLow, atHigh] = [body(low), body(high)];
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (atLow < 0 === atHigh < 0) throw new NotANumber("no root in the span");
  for (let count = 0; count < BISECTIONS; count += 1) {
    const middle = (low + high) / 2;
    if (body(middle) < 0 === atLow < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
