// Readings that near a bath or the air, drawn against time with their limit and what is foretold.

import { watchWhileShown } from "./changing.js";
import { valueAt } from "./curve.js";
import { drawing, drawn, label, round, scale, shape, ticks, WIDTH, widthOf } from "./drawing.js";
import { element } from "./element.js";
import { foretell, seriesOf } from "./foretelling.js";
import { sayForetold } from "./foretold_words.js";
import { items, tell, thingOf, titleOf } from "./log_words.js";
import { frozenValues } from "./runs.js";
import { clock } from "./words_said.js";

/** @typedef {import("./logging.js").Page} Page @typedef {import("./log_words.js").Teller} Teller */

const [LEFT, RIGHT, TOP, BOTTOM, HEIGHT] = [62, 350, 16, 190, 216];
const ROUND_SPANS = [60_000, 300_000, 600_000, 900_000, 1_800_000, 3_600_000, 7_200_000];
const SAMPLES = 24;

/** @param {Page} page @param {Teller} teller @param {HTMLElement} place */
export function mountCurves(page, teller, place) {
  const shown = Object.entries(items).filter(([, { curve }]) => curve).map(([of]) => of);
  let seen = -1;
  const paint = () => {
    const index = page.log.of(page.run());
    if (index.all().length === seen) return;
    seen = index.all().length;
    const marks = new Set(shown.flatMap((of) => [of, items[of].curve?.toward]));
    const standing = index.standing().filter(({ of }) => marks.has(of));
    place.replaceChildren(...shown.flatMap((of) => figuresOf(page, teller, of, standing)));
  };
  paint();
  let waiting = 0;
  watchWhileShown(page.store, place, () => void (waiting ||= window.setTimeout(() => {
    waiting = 0;
    paint();
  }, 60)));
}

/** @param {Page} page @param {Teller} teller @param {string} of @param {import("./records.js").Entry[]} standing */
function figuresOf(page, teller, of, standing) {
  const nears = items[of].curve;
  if (!nears) return [];
  return seriesOf(of, nears, standing, frozenValues(page.log, page.run())).map((series, place) => {
    const foretold = foretell(series.entries, series.toward);
    const name = [titleOf(of), thingOf({ of, name: series.name }), series.lot && tell("lot", { lot: series.lot })].filter(Boolean).join(", ");
    const said = foretold ? sayForetold(foretold, teller, of, name) : "";
    const late = foretold && ["late", "never"].includes(foretold.kind);
    const picture = series.entries.length > 1 ? [drawn(told(`curve-${of}-${place}`, name, said, series, foretold, teller, of))] : [];
    return element("figure", { class: "view" }, ...picture, element("figcaption", { class: late ? "verdict verdict--outside" : "" }, said));
  });
}

/**
 * @param {string} id @param {string} name @param {string} said @param {ReturnType<typeof seriesOf>[number]} series
 * @param {import("./foretelling.js").Foretold | null} foretold @param {Teller} teller @param {string} of
 */
function told(id, name, said, { entries }, foretold, teller, of) {
  const points = entries.map(({ at, value }) => ({ x: at, y: Number(value) }));
  const until = Math.min(foretold?.at ?? Infinity, points[0].x + 12 * 3_600_000);
  const lastX = Math.max(points[points.length - 1].x, Number.isFinite(until) ? until : 0);
  const limit = foretold?.limit;
  const ys = [...points.map(({ y }) => y), ...(limit === undefined ? [] : [limit])];
  const room = (Math.max(...ys) - Math.min(...ys)) * 0.08 + 0.5;
  const across = scale(points[0].x, lastX, LEFT, RIGHT);
  const up = scale(Math.min(...ys) - room, Math.max(...ys) + room, BOTTOM, TOP);
  const pair = (/** @type {number} */ x, /** @type {number} */ y) => `${round(across(x))},${round(up(y))}`;
  const curve = foretold?.curve;
  const line = curve && Array.from({ length: SAMPLES + 1 }, (_, place) => {
    const x = curve.from + ((lastX - curve.from) * place) / SAMPLES;
    return pair(x, valueAt(curve, x));
  });
  return drawing(id, tell("curve_title", { title: name, name: "" }).replace(/, $/, ""), tell("curve_words", { foretold: said }), HEIGHT, [
    ...timeTicks(points[0].x, lastX).flatMap((x) => [shape("line", { x1: round(across(x)), x2: round(across(x)), y1: TOP, y2: BOTTOM, class: "drawn__grid" }), label(Math.min(across(x), WIDTH - widthOf(clock(x)) / 2), BOTTOM + 18, clock(x), "drawn__small", "middle")]),
    ...ys.filter((y, place) => place === 0 || place === points.length - 1).map((y) => label(LEFT - 6, up(y) + 4, teller.value(of, y), "drawn__small", "end")),
    ...(limit === undefined ? [] : [shape("line", { x1: LEFT, x2: RIGHT, y1: round(up(limit)), y2: round(up(limit)), class: "drawn__limit" }), label(RIGHT, up(limit) - 5, teller.value(of, limit), "drawn__strong drawn__small", "end")]),
    ...(line ? [shape("polyline", { points: line.join(" "), class: "drawn__line", "stroke-dasharray": "3 4" })] : []),
    shape("polyline", { points: points.map(({ x, y }) => pair(x, y)).join(" "), class: "drawn__line" }),
    ...points.map(({ x, y }) => shape("circle", { cx: round(across(x)), cy: round(up(y)), r: 4, class: "drawn__point" })),
  ]);
}

/** Round times of the phone's own clock. @param {number} from @param {number} to */
function timeTicks(from, to) {
  const zone = new Date(from).getTimezoneOffset() * 60_000;
  return ticks(from - zone, to - zone, 4, ROUND_SPANS).map((x) => x + zone);
}
