// First what is on the screen; what is folded away or a long way off, which is most of a long page, follows a moment
// later, a little at a time.

const NEAR = "50%";
const LATER = 60;
const AT_ONCE = 4;

/**
 * What it returns does something to one of the elements: at once where that can be seen, else later, or as soon as the
 * element comes near. Of several things asked for in between only the last is done.
 * @param {HTMLElement[]} elements @returns {(element: HTMLElement, act: () => void) => void}
 */
export function screenFirst(elements) {
  /** @type {Set<Element>} until the browser has told, nothing is far */ const far = new Set();
  /** @type {Map<Element, () => void>} */ const left = new Map();
  let waiting = 0;
  const finish = (/** @type {Element} */ element) => {
    const act = left.get(element);
    left.delete(element);
    act?.();
  };
  const goOn = () => {
    const end = performance.now() + AT_ONCE;
    for (const element of left.keys()) {
      finish(element);
      if (performance.now() > end) break;
    }
    waiting = left.size && window.setTimeout(goOn);
  };
  const watcher = new IntersectionObserver((seen) => {
    for (const { target, isIntersecting } of seen) {
      if (!isIntersecting) far.add(target);
      else if (far.delete(target)) finish(target);
    }
  }, { rootMargin: NEAR });
  for (const element of elements) watcher.observe(element);
  return (element, act) => {
    left.set(element, act);
    if (!far.has(element)) return finish(element);
    waiting ||= window.setTimeout(goOn, LATER);
  };
}
