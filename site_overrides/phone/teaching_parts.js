// Brings in the programs about teaching only where a page has a use for them.

/** @typedef {import("./logging.js").Page} Page */

/** A mark on an element, the module that fills it, and by which function. */
const PARTS = [
  ["drills", "drills_page", "mountDrills"],
  ["path", "paths_page", "mountPath"],
  ["paths", "paths_page", "mountPaths"],
  ["signing", "signing_page", "mountSigning"],
  ["people", "signed_marks", "mountSignedMarks"],
];

/** @param {Page} page */
export function mountTeaching(page) {
  for (const button of document.querySelectorAll("[data-teach]")) {
    button.addEventListener("click", async () => (await import("./teaching_views.js")).openTeaching(page, /** @type {HTMLElement} */ (button)));
  }
  return Promise.all(PARTS.flatMap(([mark, module, mount]) => [...document.querySelectorAll(`[data-${mark}]`)].map(async (element) => (await import(`./${module}.js`))[mount](page, element))));
}
