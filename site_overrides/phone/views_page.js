// The day as pictures that follow the plan, each with its numbers behind it.

import { drawBars } from "./bars.js";
import { write } from "./changing.js";
import { drawCurve, sample } from "./curves.js";
import { draw, drawing } from "./drawing.js";
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
  return follow(plan, figure, (formulas) => inTurn(figure, () => {
    const { height, inside } = tellOf(id, plan, plan.compute(formulas), figure);
    draw(place, [drawing(`view-${id}`, figure.dataset.title ?? "", figure.dataset.description ?? "", height, inside)]);
  }));
}

/** @param {string} id @param {import("./plan_state.js").Plan} plan @param {import("./plan_state.js").Outcome} outcome @param {HTMLElement} figure */
function tellOf(id, plan, { formulas, settings, day }, figure) {
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
  if (!body) return;
  const rows = points.filter((_, place) => place % every === 0);
  while (body.children.length > rows.length) body.lastElementChild?.remove();
  while (body.children.length < rows.length) body.append(newRow());
  rows.forEach(({ x, y }, place) => {
    const [head, cell] = body.children[place].children;
    write(head, say(curve.sweep, x, "both"));
    write(cell, say(curve.read, y, "both"));
  });
}

function newRow() {
  const row = document.createElement("tr");
  row.append(Object.assign(document.createElement("th"), { scope: "row" }), document.createElement("td"));
  return row;
}
