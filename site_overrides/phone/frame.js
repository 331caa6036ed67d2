// What the theme leaves undone for people who cannot see or cannot point.

/** @type {string | undefined} */
let last;

export function startFrame() {
  const drawer = /** @type {HTMLInputElement} */ (document.querySelector("[data-md-toggle=drawer]"));
  const opener = /** @type {HTMLElement} */ (document.querySelector("header [for=__drawer]"));
  const paint = () => opener.setAttribute("aria-expanded", String(drawer.checked));
  const close = () => drawer.checked && drawer.click();
  drawer.addEventListener("change", () => {
    paint();
    if (drawer.checked) setTimeout(() => /** @type {HTMLElement | null} */ (document.querySelector(".md-nav--primary a.md-nav__link"))?.focus(), 250);
  });
  paint();
  document.addEventListener("keydown", (event) => {
    const button = /** @type {HTMLElement | null} */ (/** @type {Element} */ (event.target).closest?.("[data-button]"));
    if (button && event.key === " ") {
      event.preventDefault();
      button.click();
    }
    if (event.key === "Escape" && drawer.checked) {
      close();
      opener.focus();
    }
  });
}

/** After a change of page the reader stands at its title, as after a full load. */
export function arrive() {
  const here = location.pathname;
  const moved = last !== undefined && last !== here;
  last = here;
  openTarget();
  if (!moved || location.hash) return;
  const title = document.querySelector("h1");
  if (!title) return;
  title.tabIndex = -1;
  title.focus({ preventScroll: true });
}

/** A link to something inside a closed fold opens the fold. */
function openTarget() {
  const target = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const fold = target && target.closest("details");
  if (!fold || fold.open) return;
  fold.open = true;
  target.scrollIntoView();
}
