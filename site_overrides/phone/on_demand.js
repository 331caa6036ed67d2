// Fetches programs when there is a use for them. A page comes with the numbers of the farm's own plan, so as long as
// nothing is changed on this phone, neither the formulas nor what paints with them is needed.

import { loaded } from "./plan_state.js";

/**
 * What is fetched when first needed and is there from then on; asked for again only where fetching failed.
 * @template Fetched @param {() => Promise<Fetched>} fetch @returns {() => Promise<Fetched>}
 */
export function once(fetch) {
  /** @type {Promise<Fetched> | undefined} */ let kept;
  return () => (kept ??= fetch().catch((fault) => {
    kept = undefined;
    throw fault;
  }));
}

/**
 * Parts of a page, each with the mark of its elements; resolves when all are there and hear what is tapped.
 * @template Page @param {Page} page @param {[string, (page: Page, element: HTMLElement) => unknown][]} parts
 */
export const mountParts = (page, parts) => Promise.all(parts.flatMap(([mark, mount]) =>
  [...document.querySelectorAll(mark)].map((element) => mount(page, /** @type {HTMLElement} */ (element)))));

const fetchPaint = once(() => import("./paint.js"));

/** Paints now, and again at every change while this page is shown. @param {{plan: import("./plan_state.js").Plan}} page */
export function mountPaint({ plan }) {
  const content = document.querySelector("[data-md-component=container]") ?? document.body;
  /** @type {ReturnType<typeof import("./paint.js").painter> | undefined} */ let paintPage;
  const paint = async () => {
    if (!plan.differs() && !paintPage) return;
    const [{ painter }, formulas] = await Promise.all([fetchPaint(), loaded(plan)]);
    paintPage ??= painter();
    paintPage(plan, plan.compute(formulas));
  };
  content.addEventListener("unfolded", () => {
    paintPage = undefined; // there is more to look up
    paint();
  });
  const stop = plan.watch(() => (content.isConnected ? paint() : stop()));
  return paint();
}

/** The fields of the plan, where the page has them. @param {{plan: import("./plan_state.js").Plan}} page */
export async function mountPlanFields(page) {
  if (document.querySelector("[data-plan]")) (await import("./plan_fields.js")).mountPlanFields(page);
}

/** How far each station is, and the days, where the page shows them. @param {any} page */
export async function mountToday(page) {
  if (!document.querySelector("[data-procedure]")) return;
  const [{ mountProgress }, { mountRuns }] = await Promise.all([import("./progress.js"), import("./days.js")]);
  mountProgress(page);
  mountRuns(page);
}

/** Search, from the first time that someone asks for it. @param {URL} root @param {import("./plan_state.js").Plan} plan */
export function awaitSearch(root, plan) {
  document.addEventListener("click", async (event) => {
    if (!(/** @type {Element} */ (event.target).closest?.("[data-search-open]"))) return;
    (await import("./finder.js")).openFinder(root, plan);
  });
}
