// Whether a value lies in its range. Both are in SI units, and a last digit is left to changes of unit.

const SLACK = 1e-9;

/** @param {number} value @param {[number, number]} range */
export function liesWithin(value, [low, high]) {
  const slack = SLACK * Math.max(Math.abs(low), Math.abs(high));
  return value >= low - slack && value <= high + slack;
}
