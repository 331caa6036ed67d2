/**
 * A QR code as rows of dark (1) and light (0) modules (ISO/IEC 18004), byte mode, levels L and M, versions 1 to 25.
 *
 * @typedef {import("./qr_words.js").Level} Level
 */

import { LARGEST, codewords, fits } from "./qr_words.js";

const LEVEL_BITS = { L: 1, M: 0 };
/** @type {((x: number, y: number) => number)[]} dark is turned round where the pattern gives nought */
const MASKS = [
  (x, y) => (x + y) % 2,
  (x, y) => y % 2,
  (x) => x % 3,
  (x, y) => (x + y) % 3,
  (x, y) => (Math.floor(x / 3) + Math.floor(y / 2)) % 2,
  (x, y) => ((x * y) % 2) + ((x * y) % 3),
  (x, y) => (((x * y) % 2) + ((x * y) % 3)) % 2,
  (x, y) => (((x + y) % 2) + ((x * y) % 3)) % 2,
];

/** The smallest code that holds a text of plain ASCII, as well protected as its size allows; null where none does. @param {string} text */
export function qrCode(text) {
  const bytes = new Uint8Array(Array.from(text, (letter) => letter.charCodeAt(0)));
  for (let version = 1; version <= LARGEST; version += 1) {
    if (fits(bytes.length, version, "L")) return drawCode(bytes, version, fits(bytes.length, version, "M") ? "M" : "L");
  }
  return null;
}

/** @param {Uint8Array} bytes @param {number} version @param {Level} level @param {number} [mask] the one that reads best, unless given */
export function drawCode(bytes, version, level, mask) {
  const words = codewords(bytes, version, level);
  const codes = (mask === undefined ? MASKS.map((_, number) => number) : [mask]).map((number) => masked(words, version, level, number));
  const costs = codes.map((code) => (codes.length > 1 ? cost(code) : 0));
  return codes[costs.indexOf(Math.min(...costs))];
}

/** @param {number[]} words @param {number} version @param {Level} level @param {number} mask */
function masked(words, version, level, mask) {
  const size = 17 + 4 * version;
  const rows = Array.from({ length: size }, () => Array(size).fill(-1));
  drawMarks(rows, version);
  drawFormat(rows, (LEVEL_BITS[level] << 3) | mask);
  drawData(rows, words, MASKS[mask]);
  return rows;
}

/** @param {number[][]} rows @param {number} version */
function drawMarks(rows, version) {
  const size = rows.length;
  for (const [left, top] of [[3, 3], [size - 4, 3], [3, size - 4]]) {
    drawSquares(rows, left, top, 4, (ring) => (ring !== 2 && ring !== 4 ? 1 : 0));
  }
  const lines = alignment(version);
  const last = lines.length - 1;
  lines.forEach((left, one) => lines.forEach((top, other) => {
    const corner = (one === 0 && (other === 0 || other === last)) || (one === last && other === 0);
    if (!corner) drawSquares(rows, left, top, 2, (ring) => (ring !== 1 ? 1 : 0));
  }));
  for (let place = 8; place < size - 8; place += 1) rows[6][place] = rows[place][6] = place % 2 ? 0 : 1;
  rows[size - 8][8] = 1;
  if (version < 7) return;
  const bits = (version << 12) | check(version, 12, 0x1f25);
  for (let bit = 0; bit < 18; bit += 1) {
    const [near, far] = [Math.floor(bit / 3), size - 11 + (bit % 3)];
    rows[near][far] = rows[far][near] = (bits >>> bit) & 1;
  }
}

/** Where the small squares stand. @param {number} version */
function alignment(version) {
  if (version === 1) return [];
  const count = Math.floor(version / 7) + 2;
  const step = 2 * Math.ceil((4 * version + 4) / (2 * count - 2));
  const places = Array.from({ length: count - 1 }, (_, place) => 17 + 4 * version - 7 - place * step);
  return [6, ...places.reverse()];
}

/** @param {number[][]} rows @param {number} left @param {number} top @param {number} reach @param {(ring: number) => number} dark */
function drawSquares(rows, left, top, reach, dark) {
  for (let y = -reach; y <= reach; y += 1) {
    for (let x = -reach; x <= reach; x += 1) {
      if (rows[top + y]?.[left + x] !== undefined) rows[top + y][left + x] = dark(Math.max(Math.abs(x), Math.abs(y)));
    }
  }
}

/** The remainder that protects a few bits. @param {number} value @param {number} length @param {number} divisor */
function check(value, length, divisor) {
  let rest = value;
  for (let bit = 0; bit < length; bit += 1) rest = (rest << 1) ^ ((rest >>> (length - 1)) * divisor);
  return rest & ((1 << length) - 1);
}

/** @param {number[][]} rows @param {number} format */
function drawFormat(rows, format) {
  const bits = ((format << 10) | check(format, 10, 0x537)) ^ 0x5412;
  const size = rows.length;
  for (let bit = 0; bit < 15; bit += 1) {
    const dark = (bits >>> bit) & 1;
    if (bit < 8) rows[bit < 6 ? bit : bit + 1][8] = rows[8][size - 1 - bit] = dark;
    else rows[8][bit === 8 ? 7 : 14 - bit] = rows[size - 15 + bit][8] = dark;
  }
}

/** Two columns at a time from the right, up and down; modules that are taken are passed over. @param {number[][]} rows @param {number[]} words @param {(x: number, y: number) => number} mask */
function drawData(rows, words, mask) {
  const size = rows.length;
  let bit = 0;
  for (let right = size - 1; right >= 1; right -= right === 8 ? 3 : 2) {
    const up = ((right + 1) & 2) === 0;
    for (let step = 0; step < 2 * size; step += 1) {
      const [x, row] = [right - (step % 2), Math.floor(step / 2)];
      const y = up ? size - 1 - row : row;
      if (rows[y][x] !== -1) continue;
      const dark = (words[bit >>> 3] ?? 0) >>> (7 - (bit & 7)) & 1;
      rows[y][x] = dark ^ (mask(x, y) === 0 ? 1 : 0);
      bit += 1;
    }
  }
}

/** How hard a code is to read: runs, blocks, look-alikes of the corner marks, and more dark than light. @param {number[][]} rows */
function cost(rows) {
  const size = rows.length;
  const columns = rows.map((_, x) => rows.map((row) => row[x]));
  let total = 0;
  for (const line of [...rows, ...columns].map((cells) => cells.join(""))) {
    for (const run of line.match(/0{5,}|1{5,}/g) ?? []) total += run.length - 2;
    total += 40 * (`0000${line}0000`.match(/00001011101|1011101(?=0000)/g)?.length ?? 0);
  }
  let dark = 0;
  for (let y = 0; y < size; y += 1) {
    for (let x = 0; x < size; x += 1) {
      dark += rows[y][x];
      if (x && y && rows[y][x] === rows[y][x - 1] && rows[y][x] === rows[y - 1][x] && rows[y][x] === rows[y - 1][x - 1]) total += 3;
    }
  }
  return total + 10 * Math.floor(Math.abs((20 * dark) / (size * size) - 10));
}
