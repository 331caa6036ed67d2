// What goes on round a page while it is read, printed, or gives way to another.

import { bringOut, unfold } from "./folds.js";

/** @type {string | undefined} */
let last;
/** @type {IntersectionObserver} */ let titleWatch;

export function startFrame() {
  showIcon();
  const name = document.querySelector(".md-header__title");
  titleWatch = new IntersectionObserver(([{ isIntersecting }]) => name?.classList.toggle("md-header__title--active", !isIntersecting), { rootMargin: "-56px 0px 0px" });
  window.addEventListener("hashchange", openTarget);
  document.addEventListener("toggle", ({ target }) => target instanceof HTMLDetailsElement && target.open && unfold(target), true);
  document.addEventListener("error", ({ target }) => target instanceof HTMLImageElement && target.remove(), true);
  window.addEventListener("beforeprint", () => {
    for (const fold of /** @type {NodeListOf<HTMLDetailsElement>} */ (document.querySelectorAll("details:not([open])"))) {
      unfold(fold);
      fold.open = true;
      fold.dataset.printed = "";
    }
  });
  window.addEventListener("afterprint", () => {
    for (const fold of /** @type {NodeListOf<HTMLDetailsElement>} */ (document.querySelectorAll("[data-printed]"))) {
      fold.open = false;
      delete fold.dataset.printed;
    }
  });
}

/** The tab's picture: a page that waited for it would be painted later. */
function showIcon() {
  const icon = /** @type {HTMLLinkElement | null} */ (document.querySelector("link[data-comes]"));
  if (icon) icon.href = new URL(icon.dataset.comes ?? "", location.href).href;
}

/** The reader then stands at the new page's title, as after a full load. */
export function arrive() {
  const here = location.pathname;
  const moved = last !== undefined && last !== here;
  last = here;
  openTarget();
  removeBroken();
  const title = document.querySelector("h1");
  if (!title) return;
  titleWatch.disconnect();
  titleWatch.observe(title);
  if (!moved || location.hash) return;
  title.tabIndex = -1;
  title.focus({ preventScroll: true });
}

/** Without a signal, pictures that are on the host only give way to the words beside them. */
function removeBroken() {
  for (const picture of [...document.images]) if (picture.complete && !picture.naturalWidth) picture.remove();
}

/** A link to something inside a closed fold opens the fold. */
function openTarget() {
  const target = /^#[\w-]+$/.test(location.hash) && bringOut(location.hash.slice(1));
  const fold = target && target.closest("details");
  if (!fold || fold.open) return;
  fold.open = true;
  target.scrollIntoView();
}
