// A tap made while the page was there and its programs were not yet: first.js heard it, and it is done when they listen.

/** @typedef {{taps: Map<HTMLElement, boolean | undefined>, deaf: () => void}} Early  what was tapped, a box with its new state */

/** From here on the programs listen themselves; what is returned does what was tapped before. */
export function earlyTaps() {
  const { taps, deaf } = window.early;
  deaf();
  return () => {
    for (const [thing, wanted] of taps) {
      const stands = /** @type {HTMLInputElement} */ (thing).checked;
      if (thing.isConnected && (wanted === undefined || stands !== wanted)) thing.click();
    }
    taps.clear();
  };
}
