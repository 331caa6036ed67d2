// How one number comes out while another goes from one value to the next, with limits and today's point.

import { label, round, scale, shape, ticks, WIDTH, widthOf } from "./drawing.js";
import { along } from "./part_of_day.js";
import { fromSi, toSi } from "./showing.js";

/**
 * @typedef {{title: string, across?: string, up?: string, limit?: boolean}} Mark
 * @typedef {{sweep: string, begins?: string, ends: string, read: string, across: string, up: string, marks: Record<string, Mark>, band?: number}} Curve
 * @typedef {(id: string, value: number, part?: string) => string} Said
 * @typedef {{x: number, y: number}} Point
 */

const [LEFT, RIGHT, TOP, BOTTOM, HEIGHT] = [54, 350, 28, 250, 292];
const SAMPLES = 48;
const CLOCKS = [10, 30, 60, 300, 600, 900, 1800, 3600, 7200, 14400];

/**
 * Points of the curve, those left out at which the result is refused.
 * @param {Curve} curve @param {import("./plan_state.js").Formulas} formulas @param {Record<string, any>} settings @param {Record<string, any>} values
 * @returns {Point[]}
 */
export function sample({ sweep, begins, ends, read }, formulas, settings, values) {
  const [from, to] = [begins ? values[begins] : 0, values[ends]];
  if (from === undefined || to === undefined) return [];
  const at = along(formulas, settings, sweep, read);
  const points = Array.from({ length: SAMPLES + 1 }, (_, place) => {
    const x = from + ((to - from) * place) / SAMPLES;
    return { x, y: at(x) };
  });
  return /** @type {Point[]} */ (points.filter(({ y }) => typeof y === "number"));
}

/**
 * @param {Curve} curve @param {Point[]} points @param {Record<string, any>} values @param {Said} said
 * @param {import("./plan_state.js").Formulas} formulas @param {import("./plan_state.js").System} system
 * @returns {{height: number, inside: import("./drawing.js").Shape[]}}
 */
export function drawCurve(curve, points, values, said, formulas, system) {
  const marks = Object.values(curve.marks).map(({ title, across, up, limit }) => ({ title, limit, dot: Boolean(across && up), x: values[across ?? ""], y: values[up ?? ""] }));
  const shown = marks.filter(({ dot, x, y }) => (dot ? x !== undefined && y !== undefined : x !== undefined || y !== undefined));
  const band = curve.band ?? 1;
  const xs = [...points.map(({ x }) => x), ...shown.flatMap(({ x }) => x ?? [])];
  const ys = [...points.flatMap(({ y }) => [y * band, y / band]), ...shown.flatMap(({ y }) => y ?? [])];
  if (points.length < 2) return { height: 1, inside: [] };
  const [lowX, highX, lowY, highY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const room = (highY - lowY) * 0.06;
  const across = scale(lowX, highX, LEFT, RIGHT);
  const up = scale(lowY - room, highY + room, BOTTOM, TOP);
  const line = (/** @type {number} */ times) => points.map(({ x, y }) => `${round(across(x))},${round(up(y * times))}`);
  const inside = [
    ...axis(lowX, highX, 3, curve.sweep, formulas, system).flatMap((x) => acrossTick(across(x), said(curve.sweep, x))),
    ...axis(lowY, highY, 5, curve.read, formulas, system).flatMap((y) => upTick(up(y), said(curve.read, y))),
    label(LEFT, 14, curve.up, "drawn__strong drawn__small"),
    label(RIGHT, HEIGHT - 4, curve.across, "drawn__strong drawn__small", "end"),
    ...(band > 1 ? [shape("polygon", { points: [...line(band), ...line(1 / band).reverse()].join(" "), class: "drawn__band" })] : []),
    shape("polyline", { points: line(1).join(" "), class: "drawn__line" }),
  ];
  shown.forEach((mark, place) => inside.push(...drawMark(mark, across, up, place % 2 ? -8 : 18)));
  return { height: HEIGHT, inside };
}

/** Round values on an axis, in the units shown. @param {number} low @param {number} high @param {number} count @param {string} id @param {import("./plan_state.js").Formulas} formulas @param {import("./plan_state.js").System} system */
function axis(low, high, count, id, { measures, measureOf, units }, system) {
  const measure = measures[measureOf[id]];
  if (measure.form === "clock" || measure.form === "duration") return ticks(low, high, count, CLOCKS);
  const unit = units[measure[system].unit];
  return ticks(fromSi(low, unit), fromSi(high, unit), count).map((number) => toSi(number, unit));
}

/** @param {number} x @param {string} words */
const acrossTick = (x, words) => [
  shape("line", { x1: round(x), x2: round(x), y1: TOP, y2: BOTTOM, class: "drawn__grid" }),
  label(Math.min(x, WIDTH - widthOf(words) / 2), BOTTOM + 18, words, "drawn__small", "middle"),
];

/** @param {number} y @param {string} words */
const upTick = (y, words) => [
  shape("line", { x1: LEFT, x2: RIGHT, y1: round(y), y2: round(y), class: "drawn__grid" }),
  label(LEFT - 5, y + 4, words, "drawn__small", "end"),
];

/** @param {{title: string, limit?: boolean, dot: boolean, x?: number, y?: number}} mark @param {(x: number) => number} across @param {(y: number) => number} up @param {number} aside how far below its dot a title stands */
function drawMark({ title, limit, dot, x, y }, across, up, aside) {
  const look = limit ? "drawn__limit" : "drawn__moment";
  if (dot) {
    const [cx, cy] = [across(Number(x)), up(Number(y))];
    const end = cx + 10 + widthOf(title) > WIDTH;
    return [shape("circle", { cx: round(cx), cy: round(cy), r: 5, class: "drawn__point" }), label(end ? cx - 9 : cx + 9, cy + aside, title, "drawn__strong drawn__small", end ? "end" : "start")];
  }
  if (x !== undefined) {
    const place = across(x);
    return [shape("line", { x1: round(place), x2: round(place), y1: TOP, y2: BOTTOM, class: look }), label(place - 4, TOP + 12, title, "drawn__strong drawn__small", "end")];
  }
  const place = up(Number(y));
  return [shape("line", { x1: LEFT, x2: RIGHT, y1: round(place), y2: round(place), class: look }), label(LEFT + 6, place - 5, title, "drawn__strong drawn__small")];
}
