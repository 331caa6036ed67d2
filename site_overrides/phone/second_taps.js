// A wet finger taps twice where once was meant.

const SAME = 600; // milliseconds within which a tap on the same thing is no other
/** @type {WeakMap<object, number>} */ const tapped = new WeakMap();

/** Whether this tap belongs to the last one on the same thing. @param {object} thing */
export function isSecondTap(thing) {
  const now = performance.now();
  const isSecond = now - (tapped.get(thing) ?? -Infinity) < SAME;
  if (!isSecond) tapped.set(thing, now);
  return isSecond;
}
