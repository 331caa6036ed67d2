// Says what was done, and takes it back as long as the words stand there.

/**
 * @param {HTMLElement} place  a paragraph with a span for the words and a button
 * @param {string} words @param {() => void} back
 */
export function offerUndo(place, words, back) {
  /** @type {HTMLElement} */ (place.querySelector("span")).textContent = words;
  const button = /** @type {HTMLButtonElement} */ (place.querySelector("button"));
  button.onclick = () => {
    place.hidden = true;
    back();
  };
  place.hidden = false;
}

/**
 * Puts other changes in place of those of today's plan, and answers with what takes that back.
 * @param {import("./plan_state.js").Plan} plan @param {Record<string, import("./plan_state.js").Value>} changes
 */
export function replacePlan(plan, changes) {
  const before = plan.changes();
  const gone = Object.fromEntries(Object.keys(before).map((id) => [id, undefined]));
  plan.setAll({ ...gone, ...changes });
  return () => void replacePlan(plan, before);
}
