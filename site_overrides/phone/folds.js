// A fold may hold its content back in a template until it is first opened: a page of a hundred fields then begins as
// light as one of ten, for browsers look at every field that is there at every change.

const HELD = ":scope > template[data-held]";

/** Brings out what a fold holds back, and tells of it. @param {Element} fold */
export function unfold(fold) {
  const held = /** @type {HTMLTemplateElement | null} */ (fold.querySelector(HELD));
  if (!held) return;
  held.replaceWith(held.content);
  fold.dispatchEvent(new Event("unfolded", { bubbles: true }));
}

/** Whether a fold still holds something back. @param {Element} fold */
export const holdsBack = (fold) => fold.querySelector(HELD) !== null;

/** Elements in a fold, held back or not. @param {Element} fold @param {string} name @returns {HTMLElement[]} */
export function allIn(fold, name) {
  const held = /** @type {HTMLTemplateElement | null} */ (fold.querySelector(HELD));
  return [...(held?.content ?? fold).querySelectorAll(name)].map((found) => /** @type {HTMLElement} */ (found));
}

/** The element of that id, brought out where it is held back. @param {string} id */
export function bringOut(id) {
  const there = document.getElementById(id);
  if (there) return there;
  const fold = [...document.querySelectorAll("details")].find((each) => holdsBack(each) && allIn(each, `#${id}`).length);
  if (fold) unfold(fold);
  return document.getElementById(id);
}
