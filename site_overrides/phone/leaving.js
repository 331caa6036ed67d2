// What was not yet on disk when a page was left goes on to the next page: browsers end what was begun in the last
// moment. A killed browser may lose what is kept here, so that this is only for what the other store has not got yet.

/** @param {string} name @param {Iterable<[string, any]>} facts */
export function leaveBehind(name, facts) {
  const left = [...facts].map(([key, value]) => (value === undefined ? [key] : [key, value]));
  try {
    if (left.length) localStorage.setItem(name, JSON.stringify(left));
  } catch {
    // full or forbidden: the other store is all there is
  }
}

/** @param {string} name @returns {[string, any][]} */
export function findLeft(name) {
  try {
    return JSON.parse(localStorage.getItem(name) ?? "[]").map((/** @type {any[]} */ [key, value]) => [key, value]);
  } catch {
    return [];
  }
}

/** @param {string} name */
export function forgetLeft(name) {
  try {
    localStorage.removeItem(name);
  } catch {
    // there was nothing
  }
}
