/** How printed formulas choose among members of a set. `generator/formula/choosing.py` is the same. */

import { finite } from "./runtime.js";

const MOST_HELPERS = 10000;

/** The member with the least value, the first of equals. @param {string[]} members @param {number[]} values */
export function argmin(members, values) {
  let best = 0;
  for (let index = 1; index < values.length; index += 1) if (values[index] < values[best]) best = index;
  return members[best];
}

/** The member with the greatest value, the first of equals. @param {string[]} members @param {number[]} values */
export function argmax(members, values) {
  let best = 0;
  for (let index = 1; index < values.length; index += 1) if (values[index] > values[best]) best = index;
  return members[best];
}

/**
 * Share out helpers so that the slowest place is as fast as can be, with as few helpers as that takes.
 *
 * A place with n helpers reaches n / work, and never more than its cap. Where there are fewer helpers than places,
 * they walk between them and share all, each place in proportion to its work.
 * @param {number} total @param {number[]} works @param {number[]} caps
 */
export function allot(total, works, caps) {
  const helpers = Math.floor(finite(total + 1e-9));
  if (helpers < works.length) {
    const together = works.reduce((sum, work) => sum + work, 0);
    const shared = Math.min(finite(total / together), ...caps);
    return works.map((work) => shared * work);
  }
  const counts = works.map(() => 1.0);
  for (let used = works.length; used < Math.min(helpers, MOST_HELPERS); used += 1) {
    counts[slowest(counts, works, caps)] += 1;
  }
  const slow = slowest(counts, works, caps);
  const reached = rate(counts[slow], works[slow], caps[slow]);
  for (let index = 0; index < works.length; index += 1) {
    while (counts[index] > 1 && rate(counts[index] - 1, works[index], caps[index]) >= reached) counts[index] -= 1;
  }
  return counts;
}

/** @param {number[]} counts @param {number[]} works @param {number[]} caps */
function slowest(counts, works, caps) {
  let slow = 0;
  for (let index = 1; index < counts.length; index += 1) {
    if (rate(counts[index], works[index], caps[index]) < rate(counts[slow], works[slow], caps[slow])) slow = index;
  }
  return slow;
}

/** @param {number} count @param {number} work @param {number} cap */
function rate(count, work, cap) {
  return count >= cap * work ? cap : count / work;
}
