// Stretches of the day, one under the other, over the hours of the clock.

import { label, round, scale, shape, ticks, WIDTH, widthOf } from "./drawing.js";

/**
 * @typedef {(id: string, part?: string) => string} Said
 * @typedef {{spans: Record<string, {title: string, begins: string, ends: string, waiting?: boolean}>, moments?: Record<string, string>}} Timeline
 */

const ROW = 38;
const HOUR = 3600;
const SIDE = 12;

/**
 * @param {Timeline} timeline @param {Record<string, any>} values @param {Said} said @param {(seconds: number) => string} hour
 * @returns {{height: number, inside: import("./drawing.js").Shape[]}}
 */
export function drawTimeline({ spans, moments = {} }, values, said, hour) {
  const rows = Object.values(spans).filter(({ begins, ends }) => values[begins] !== undefined && values[ends] !== undefined);
  if (!rows.length) return { height: 1, inside: [] };
  const times = rows.flatMap(({ begins, ends }) => [values[begins], values[ends]]);
  const [low, high] = [Math.min(...times), Math.max(...times)];
  const marks = Object.entries(moments).filter(([id]) => values[id] >= low && values[id] <= high);
  const across = scale(low, high, SIDE, WIDTH - SIDE);
  const top = 24 + 18 * marks.length;
  const height = top + rows.length * ROW + 6;
  const inside = hours(low, high, across, top, height, hour);
  marks.forEach(([id, words], place) => inside.push(...moment(across(values[id]), 36 + 18 * place, height, `${words} ${said(id)}`)));
  rows.forEach((row, place) => inside.push(...span(row, top + place * ROW, across, values, said)));
  return { height, inside };
}

/** @param {number} low @param {number} high @param {(time: number) => number} across @param {number} top @param {number} height @param {(seconds: number) => string} hour */
function hours(low, high, across, top, height, hour) {
  return ticks(low, high, 6, [1, 2, 3, 4, 6, 12, 24].map((count) => count * HOUR)).flatMap((time) => [
    shape("line", { x1: round(across(time)), x2: round(across(time)), y1: 20, y2: height, class: "drawn__grid" }),
    label(Math.min(WIDTH - 20, Math.max(20, across(time))), 14, hour(time), "drawn__small", "middle"),
  ]);
}

/** A line through all rows; its words stand on the side where there is room. @param {number} x @param {number} y @param {number} height @param {string} words */
function moment(x, y, height, words) {
  const right = x + 5 + widthOf(words) < WIDTH;
  return [
    shape("line", { x1: round(x), x2: round(x), y1: y - 12, y2: height, class: "drawn__moment" }),
    label(right ? x + 5 : x - 5, y, words, "drawn__strong drawn__small", right ? "start" : "end"),
  ];
}

/** The words stand over the bar, beginning where it begins if there is room. @param {{title: string, begins: string, ends: string, waiting?: boolean}} row @param {number} y @param {(time: number) => number} across @param {Record<string, any>} values @param {Said} said */
function span({ title, begins, ends, waiting }, y, across, values, said) {
  const [left, right] = [across(values[begins]), across(values[ends])];
  const words = `${title} ${said(begins)}–${said(ends)}`;
  const start = Math.max(2, Math.min(left, WIDTH - 2 - widthOf(words)));
  const bar = { x: round(left), y: y + 17, width: round(Math.max(2, right - left)), height: 14, rx: 2 };
  return [shape("rect", { ...bar, class: waiting ? "drawn__waiting" : "drawn__bar" }), label(start, y + 12, words)];
}
