/**
 * Readings that near another temperature, such as that of a bath, ever more slowly: after a lag the difference shrinks
 * by the same share in each minute. Fitted to what was measured, it foretells when a limit is reached.
 *
 * @typedef {{at: number, value: number}} Point  milliseconds since 1970, SI units
 * @typedef {{rate: number, difference: number, from: number, toward: number, spread: number}} Curve  rate in 1/s
 */

const LAG_SHARE = 0.7;

/**
 * The curve through points in order of time, or null where they do not near it. While more than seven tenths of the
 * first difference are left the lag still rules; such points are left out where two later ones are there.
 * @param {Point[]} points @param {number} toward @returns {Curve | null}
 */
export function fitCurve(points, toward) {
  const side = Math.sign((points[0]?.value ?? toward) - toward);
  const near = points.map(({ at, value }) => ({ at, left: side * (value - toward) })).filter(({ left }) => left > 0);
  const late = near.filter(({ left }) => left <= LAG_SHARE * near[0].left);
  const used = late.length >= 2 ? late : near.slice(-2);
  if (side === 0 || used.length < 2) return null;
  const from = used[0].at;
  const times = used.map(({ at }) => (at - from) / 1000);
  const logs = used.map(({ left }) => Math.log(left));
  const [meanTime, meanLog] = [mean(times), mean(logs)];
  const width = sum(times.map((time) => (time - meanTime) ** 2));
  const slope = width > 0 ? sum(times.map((time, place) => (time - meanTime) * (logs[place] - meanLog))) / width : 0;
  if (!(slope < 0)) return null;
  const begin = meanLog - slope * meanTime;
  const spread = Math.sqrt(mean(logs.map((log, place) => (log - begin - slope * times[place]) ** 2)));
  return { rate: -slope, difference: side * Math.exp(begin), from, toward, spread };
}

/** The curve's value at a time. @param {Curve} curve @param {number} at */
export function valueAt({ rate, difference, from, toward }, at) {
  return toward + difference * Math.exp((-rate * (at - from)) / 1000);
}

/** When the curve comes to a value; null where it never does. @param {Curve} curve @param {number} value */
export function timeOf({ rate, difference, from, toward }, value) {
  const ratio = difference / (value - toward);
  return ratio > 0 && Number.isFinite(ratio) ? from + (Math.log(ratio) / rate) * 1000 : null;
}

/**
 * When a limit was passed, between the two readings on either side of it; null where it was not.
 * @param {Point[]} points @param {number} toward @param {number} limit
 */
export function reachedAt(points, toward, limit) {
  const share = (/** @type {Point} */ { value }) => (value - toward) / (limit - toward);
  for (let place = 0; place < points.length; place += 1) {
    const here = share(points[place]);
    if (limit === toward || here > 1) continue;
    if (place === 0) return points[0].at;
    const before = share(points[place - 1]);
    const part = here > 0 ? Math.log(before) / Math.log(before / here) : (before - 1) / (before - here);
    return points[place - 1].at + part * (points[place].at - points[place - 1].at);
  }
  return null;
}

/** @param {number[]} numbers */
const sum = (numbers) => numbers.reduce((total, number) => total + number, 0);

/** Not a number where there are none. @param {number[]} numbers */
export const mean = (numbers) => sum(numbers) / numbers.length;
