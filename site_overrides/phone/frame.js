// What the theme leaves undone when one page takes the place of another.

/** @type {string | undefined} */
let last;

/** The reader then stands at the new page's title, as after a full load. */
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
  const target = /^#[\w-]+$/.test(location.hash) && document.getElementById(location.hash.slice(1));
  const fold = target && target.closest("details");
  if (!fold || fold.open) return;
  fold.open = true;
  target.scrollIntoView();
}
