// The day as pictures that follow the plan, each with its numbers behind it.

import { drawBars } from "./bars.js";
import { drawCurve, sample } from "./curves.js";
import { drawing } from "./drawing.js";
import { views } from "./plan_content.js";
import { follow, sayer } from "./plan_words.js";
import { screenFirst } from "./screen_first.js";
import { drawTimeline } from "./timeline.js";

const ROWS = 8;

/** @param {{plan: import("./plan_state.js").Plan}} page @param {HTMLElement} figure */
export function mountView({ plan }, figure) {
  const id = figure.dataset.view ?? "";
  const place = /** @type {HTMLElement} */ (figure.querySelector("[data-drawing]"));
  const inTurn = screenFirst([figure]);
  follow(plan, figure, (formulas) => inTurn(figure, () => {
    const { height, inside } = draw(id, plan, plan.compute(formulas), figure);
    place.replaceChildren(drawing(`view-${id}`, figure.dataset.title ?? "", figure.dataset.description ?? "", height, inside));
  }));
}

/** @param {string} id @param {import("./plan_state.js").Plan} plan @param {import("./plan_state.js").Outcome} outcome @param {HTMLElement} figure */
function draw(id, plan, { formulas, settings, day }, figure) {
  const { timeline, bars, curve } = views[id];
  const say = sayer(plan, formulas);
  const said = (/** @type {string} */ name, /** @type {string} */ part = "first") => say(name, day.values[name], part);
  if (timeline) return drawTimeline(timeline, day.values, said, (seconds) => say(Object.values(/** @type {any} */ (timeline).spans)[0].begins, seconds));
  if (bars) return drawBars(bars, day.values, said);
  const points = sample(curve, formulas, settings, day.values);
  paintSamples(figure, curve, points, say);
  return drawCurve(curve, points, day.values, say, formulas, plan.system());
}

/** @param {HTMLElement} figure @param {import("./curves.js").Curve} curve @param {import("./curves.js").Point[]} points @param {(id: string, value: number, part?: string) => string} say */
function paintSamples(figure, curve, points, say) {
  const body = figure.nextElementSibling?.querySelector("[data-samples]");
  const every = Math.max(1, Math.floor(points.length / ROWS));
  body?.replaceChildren(...points.filter((_, place) => place % every === 0).map(({ x, y }) => {
    const row = document.createElement("tr");
    const head = Object.assign(document.createElement("th"), { textContent: say(curve.sweep, x, "both"), scope: "row" });
    row.append(head, Object.assign(document.createElement("td"), { textContent: say(curve.read, y, "both") }));
    return row;
  }));
}
