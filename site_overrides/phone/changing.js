// Changes to what a page shows, and when to make them. Where it already is as it should be nothing is touched, so that
// the browser has nothing to style, lay out or paint again.

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

/** Paints when something changes that it is about, told by its key. @param {import("./store.js").Store} store @param {HTMLElement} element @param {() => void} paint @param {...RegExp} about  anything at all where none is given */
export function watchWhileShown(store, element, paint, ...about) {
  const stop = store.watch((_, keys) => {
    if (!element.isConnected) stop();
    else if (keys.some((key) => (about.length ? about.some((one) => one.test(key)) : key))) paint();
  });
}
