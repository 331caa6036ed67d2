// Quantities of one measure side by side, the one that stands out marked.

import { label, round, shape, WIDTH } from "./drawing.js";

const ROW = 44;

/**
 * @param {{quantities: Record<string, string>, marked: "least" | "most", mark: string}} bars
 * @param {Record<string, any>} values @param {(id: string, part?: string) => string} said
 * @returns {{height: number, inside: import("./drawing.js").Shape[]}}
 */
export function drawBars({ quantities, marked, mark }, values, said) {
  const rows = Object.entries(quantities);
  const known = rows.map(([id]) => values[id]).filter((value) => value !== undefined);
  const most = Math.max(...known, 0);
  const extreme = marked === "least" ? Math.min(...known) : most;
  const inside = rows.flatMap(([id, title], place) => {
    const y = place * ROW;
    const value = values[id];
    const standsOut = value !== undefined && Math.abs(value - extreme) <= 1e-9 * Math.abs(extreme);
    const bar = { x: 2, y: y + 20, width: round(value && most ? Math.max(2, (value / most) * (WIDTH - 4)) : 0), height: 16, rx: 2 };
    return [
      label(2, y + 14, title + (standsOut ? ` · ${mark}` : ""), standsOut ? "drawn__strong" : ""),
      label(WIDTH - 2, y + 14, said(id, "both"), standsOut ? "drawn__strong" : "", "end"),
      shape("rect", { ...bar, class: standsOut ? "drawn__worst" : "drawn__bar" }),
    ];
  });
  return { height: rows.length * ROW, inside };
}
