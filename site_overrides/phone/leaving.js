// What was not yet on disk when a page was left goes on to the next page: browsers end what was begun in the last
// moment. A killed browser may lose what is kept here, so that this is only for what the other store has not got yet.

/** Beside what other windows left. @param {string} name @param {Iterable<[string, any]>} facts */
export const leaveBehind = (name, facts) => keepLeft(name, [...new Map([...findLeft(name), ...facts])]);

/** @param {string} name @returns {[string, any][]} */
export function findLeft(name) {
  try {
    return JSON.parse(localStorage.getItem(name) ?? "[]").map((/** @type {any[]} */ [key, value]) => [key, value]);
  } catch {
    return [];
  }
}

/** Facts that came to disk since, so that none of them is ever older again. @param {string} name @param {Map<string, any>} saved */
export function forgetLeft(name, saved) {
  const left = findLeft(name);
  if (left.length) keepLeft(name, left.filter(([key]) => !saved.has(key)));
}

/** @param {string} name @param {[string, any][]} left */
function keepLeft(name, left) {
  try {
    if (left.length) localStorage.setItem(name, JSON.stringify(left.map(([key, value]) => (value === undefined ? [key] : [key, value]))));
    else localStorage.removeItem(name);
  } catch {
    // full or forbidden: the other store is all there is
  }
}
