// Brings in the programs about teaching only where a page has a use for them.

import { mountParts } from "./on_demand.js";

/** @typedef {import("./logging.js").Page} Page */

/** @type {[string, (page: Page, element: any) => unknown][]} */
const PARTS = [
  ["[data-drills]", async (page, element) => (await import("./drills_page.js")).mountDrills(page, element)],
  ["[data-path]", async (page, element) => (await import("./paths_page.js")).mountPath(page, element)],
  ["[data-paths]", async (page, element) => (await import("./paths_page.js")).mountPaths(page, element)],
  ["[data-signing]", async (page, element) => (await import("./signing_page.js")).mountSigning(page, element)],
  ["[data-people]", async (page, element) => (await import("./signed_marks.js")).mountSignedMarks(page, element)],
];

/** @param {Page} page */
export function mountTeaching(page) {
  for (const button of document.querySelectorAll("[data-teach]")) {
    button.addEventListener("click", async () => (await import("./teaching_views.js")).openTeaching(page, /** @type {HTMLElement} */ (button)));
  }
  return mountParts(page, PARTS);
}
