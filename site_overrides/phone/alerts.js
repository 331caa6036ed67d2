// Stops and warnings of the changed plan. All of them are in the page; here it is decided which are shown.

/** @param {import("./plan_state.js").Day} day */
export function paintAlerts(day) {
  const holding = new Set(day.alerts);
  for (const element of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-watch]"))) {
    element.hidden = !holding.has(element.dataset.watch ?? "");
  }
  for (const element of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-all-clear]"))) {
    element.hidden = holding.size > 0;
  }
}
