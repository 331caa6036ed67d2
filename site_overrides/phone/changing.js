// Changes to what a page shows. Where it already is as it should be nothing is touched, so that the browser has nothing
// to style, lay out or paint again.

/** Changes the text that is there: another in its place is more work for the browser. @param {Element} element @param {string} words */
export function write(element, words) {
  const text = element.firstChild;
  if (!text && !words) return;
  if (!(text instanceof Text) || text.nextSibling) element.textContent = words;
  else if (text.data !== words) text.data = words;
}

/** @param {HTMLElement} element @param {boolean} hidden */
export function hide(element, hidden) {
  if (element.hidden !== hidden) element.hidden = hidden;
}

/** @param {Element} element @param {string} name @param {string} value */
export function mark(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
