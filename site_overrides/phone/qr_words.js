/**
 * The codewords of a QR code in byte mode: data, filling, and the error correction of Reed and Solomon (ISO/IEC 18004).
 *
 * @typedef {"L" | "M"} Level
 */

/** Error correction words in a block, and blocks, by level for versions 1 to 25. */
const WORDS = {
  L: [7, 10, 15, 20, 26, 18, 20, 24, 30, 18, 20, 24, 26, 30, 22, 24, 28, 30, 28, 28, 28, 28, 30, 30, 26],
  M: [10, 16, 26, 18, 24, 16, 18, 22, 22, 26, 30, 22, 22, 24, 24, 28, 28, 26, 26, 26, 26, 28, 28, 28, 28],
};
const BLOCKS = {
  L: [1, 1, 1, 1, 1, 2, 2, 2, 2, 4, 4, 4, 4, 4, 6, 6, 6, 6, 7, 8, 8, 9, 9, 10, 12],
  M: [1, 1, 1, 2, 2, 4, 4, 4, 5, 5, 5, 8, 9, 9, 10, 10, 11, 13, 14, 16, 17, 17, 18, 20, 21],
};
export const LARGEST = WORDS.L.length;

/** Codewords that a version holds. @param {number} version */
function capacity(version) {
  let modules = (16 * version + 128) * version + 64;
  if (version >= 2) {
    const marks = Math.floor(version / 7) + 2;
    modules -= (25 * marks - 10) * marks - 55;
    if (version >= 7) modules -= 36;
  }
  return Math.floor(modules / 8);
}

/** @param {number} version @param {Level} level */
const dataWords = (version, level) => capacity(version) - WORDS[level][version - 1] * BLOCKS[level][version - 1];

/** Bits before the bytes: the mode and their number. @param {number} version */
const headBits = (version) => 4 + (version < 10 ? 8 : 16);

/** Whether so many bytes fit. @param {number} length @param {number} version @param {Level} level */
export const fits = (length, version, level) => headBits(version) + 8 * length <= 8 * dataWords(version, level);

/** All codewords in the order in which they are drawn. @param {Uint8Array} bytes @param {number} version @param {Level} level */
export function codewords(bytes, version, level) {
  const data = dataOf(bytes, version, dataWords(version, level));
  const [count, extra] = [BLOCKS[level][version - 1], WORDS[level][version - 1]];
  const short = Math.floor(data.length / count);
  const shorts = count - (data.length % count);
  const divisor = divisorOf(extra);
  const blocks = [];
  for (let place = 0, start = 0; place < count; place += 1) {
    const block = data.slice(start, (start += short + (place < shorts ? 0 : 1)));
    blocks.push({ block, check: remainder(block, divisor) });
  }
  const words = [];
  for (let index = 0; index <= short; index += 1) for (const { block } of blocks) if (index < block.length) words.push(block[index]);
  for (let index = 0; index < extra; index += 1) for (const { check } of blocks) words.push(check[index]);
  return words;
}

/** @param {Uint8Array} bytes @param {number} version @param {number} room */
function dataOf(bytes, version, room) {
  /** @type {number[]} */ const bits = [];
  const put = (/** @type {number} */ value, /** @type {number} */ length) => {
    for (let bit = length - 1; bit >= 0; bit -= 1) bits.push((value >>> bit) & 1);
  };
  put(0b0100, 4);
  put(bytes.length, headBits(version) - 4);
  for (const byte of bytes) put(byte, 8);
  put(0, Math.min(4, 8 * room - bits.length));
  put(0, (8 - (bits.length % 8)) % 8);
  for (let filler = 0xec; bits.length < 8 * room; filler ^= 0xec ^ 0x11) put(filler, 8);
  return Array.from({ length: room }, (_, place) => parseInt(bits.slice(8 * place, 8 * place + 8).join(""), 2));
}

/** A product in the field of 256 elements. @param {number} one @param {number} other */
function times(one, other) {
  let product = 0;
  for (let bit = 7; bit >= 0; bit -= 1) product = (product << 1) ^ ((product >>> 7) * 0x11d) ^ (((other >>> bit) & 1) * one);
  return product;
}

/** @param {number} degree */
function divisorOf(degree) {
  const result = Array(degree).fill(0);
  result[degree - 1] = 1;
  for (let round = 0, root = 1; round < degree; round += 1, root = times(root, 2)) {
    for (let place = 0; place < degree; place += 1) result[place] = times(result[place], root) ^ (result[place + 1] ?? 0);
  }
  return result;
}

/** @param {number[]} data @param {number[]} divisor */
function remainder(data, divisor) {
  const rest = divisor.map(() => 0);
  for (const byte of data) {
    const factor = byte ^ /** @type {number} */ (rest.shift());
    rest.push(0);
    divisor.forEach((coefficient, place) => (rest[place] ^= times(coefficient, factor)));
  }
  return rest;
}
