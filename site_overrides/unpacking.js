// Unpacks LZMA, the open format that Python's own library writes: browsers unpack none that packs pages half as well.
// Names as in the format's description; a file begins with its settings, its window and its size (13 bytes).

const STATES = 12; // what the last few things were: letters, or lengths copied from before
const EVEN = 1024; // of 2048: how likely a bit is 0 before anything was learned

/** @param {number} size */
const odds = (size) => new Uint16Array(size).fill(EVEN);

/** Reads bits that were written the shorter the likelier they were. */
class Bits {
  /** @param {Uint8Array} bytes @param {number} at */
  constructor(bytes, at) {
    this.bytes = bytes;
    this.at = at + 1; // the first is always 0
    this.range = 0xFFFFFFFF;
    this.code = 0;
    for (let place = 0; place < 4; place += 1) this.shift();
    this.range = 0xFFFFFFFF;
  }

  shift() {
    this.range = (this.range << 8) >>> 0;
    this.code = ((this.code << 8) | this.bytes[this.at]) >>> 0;
    this.at += 1;
  }

  /** A bit, and what it teaches. @param {Uint16Array} learned @param {number} place */
  one(learned, place) {
    const odd = learned[place];
    const bound = (this.range >>> 11) * odd;
    const bit = this.code < bound ? 0 : 1;
    learned[place] = bit ? odd - (odd >>> 5) : odd + ((2048 - odd) >>> 5);
    this.code -= bit ? bound : 0;
    this.range = bit ? this.range - bound : bound;
    if (this.range < 0x1000000) this.shift();
    return bit;
  }

  /** Bits that are as likely 0 as 1. @param {number} count */
  plain(count) {
    let value = 0;
    for (let left = count; left > 0; left -= 1) {
      this.range >>>= 1;
      const bit = this.code < this.range ? 0 : 1;
      this.code -= bit ? this.range : 0;
      if (this.range < 0x1000000) this.shift();
      value = value * 2 + bit;
    }
    return value;
  }

  /** A number, highest bit first. @param {Uint16Array} learned @param {number} start @param {number} count */
  number(learned, start, count) {
    let node = 1;
    for (let left = count; left > 0; left -= 1) node = node * 2 + this.one(learned, start + node);
    return node - (1 << count);
  }

  /** A number, lowest bit first. @param {Uint16Array} learned @param {number} start @param {number} count */
  turned(learned, start, count) {
    let node = 1;
    let value = 0;
    for (let place = 0; place < count; place += 1) {
      const bit = this.one(learned, start + node);
      node = node * 2 + bit;
      value += bit << place;
    }
    return value;
  }
}

/** How many bytes are copied. */
class Lengths {
  choices = odds(2);
  short = odds(16 * 8);
  middle = odds(16 * 8);
  long = odds(256);

  /** @param {Bits} bits @param {number} position */
  read(bits, position) {
    if (!bits.one(this.choices, 0)) return 2 + bits.number(this.short, position * 8, 3);
    if (!bits.one(this.choices, 1)) return 10 + bits.number(this.middle, position * 8, 3);
    return 18 + bits.number(this.long, 0, 8);
  }
}

/** How far back a copy begins; the four that were used last are told apart by a bit or two. */
class Distances {
  last = [0, 0, 0, 0];
  again = odds(STATES);
  first = odds(STATES);
  second = odds(STATES);
  third = odds(STATES);
  slots = odds(4 * 64);
  near = odds(128);
  aligned = odds(16);

  /** @param {Bits} bits @param {number} length */
  fresh(bits, length) {
    const slot = bits.number(this.slots, Math.min(length - 2, 3) * 64, 6);
    let distance = slot;
    if (slot >= 4) {
      const count = (slot >> 1) - 1;
      distance = (2 | (slot & 1)) * 2 ** count;
      distance += slot < 14 ? bits.turned(this.near, distance - slot, count) : bits.plain(count - 4) * 16 + bits.turned(this.aligned, 0, 4);
    }
    this.last = [distance, ...this.last.slice(0, 3)];
  }

  /** One of those used last but the very last. @param {Bits} bits @param {number} state */
  older(bits, state) {
    const place = bits.one(this.second, state) ? 2 + bits.one(this.third, state) : 1;
    this.last.unshift(...this.last.splice(place, 1));
  }
}

/** Single bytes, each foreseen by the one before it. */
class Letters {
  /** @param {number} before how many bits of the byte before count @param {number} place how many of the place */
  constructor(before, place) {
    this.before = before;
    this.places = (1 << place) - 1;
    this.learned = odds(0x300 << (before + place));
  }

  /** @param {Bits} bits @param {Uint8Array} out @param {number} at @param {number} copied what would stand here if the copy had gone on, else -1 */
  read(bits, out, at, copied) {
    const start = 0x300 * (((at & this.places) << this.before) + ((at ? out[at - 1] : 0) >> (8 - this.before)));
    let letter = 1;
    for (let like = copied; like >= 0 && letter < 0x100;) {
      const expected = (like >> 7) & 1;
      const bit = bits.one(this.learned, start + ((1 + expected) << 8) + letter);
      letter = letter * 2 + bit;
      like = bit === expected ? (like << 1) & 0xFF : -1;
    }
    while (letter < 0x100) letter = letter * 2 + bits.one(this.learned, start + letter);
    return letter & 0xFF;
  }
}

/** @param {Uint8Array} packed @returns {Uint8Array<ArrayBuffer>} @throws {RangeError} what is not LZMA, or was spoiled */
function unpack(packed) {
  const [settings] = packed;
  const positions = (1 << Math.floor(settings / 45)) - 1;
  const out = new Uint8Array(new DataView(packed.buffer, packed.byteOffset).getUint32(5, true));
  const bits = new Bits(packed, 13);
  const letters = new Letters(settings % 9, Math.floor(settings / 9) % 5);
  const [copies, single] = [odds(STATES * 16), odds(STATES * 16)];
  const [lengths, lengthsAgain, distances] = [new Lengths(), new Lengths(), new Distances()];
  let state = 0;
  let at = 0;

  /** Where the copy begins and how long it is; changes the state. @param {number} position */
  const copy = (position) => {
    const before = state;
    if (!bits.one(distances.again, before)) {
      state = before < 7 ? 7 : 10;
      const length = lengths.read(bits, position);
      distances.fresh(bits, length);
      return length;
    }
    if (bits.one(distances.first, before)) distances.older(bits, before);
    else if (!bits.one(single, before * 16 + position)) {
      state = before < 7 ? 9 : 11;
      return 1;
    }
    state = before < 7 ? 8 : 11;
    return lengthsAgain.read(bits, position);
  };

  while (at < out.length) {
    const position = at & positions;
    if (bits.one(copies, state * 16 + position)) {
      const end = at + copy(position);
      const back = distances.last[0] + 1;
      if (back > at || end > out.length) throw new RangeError("not LZMA, or spoiled");
      for (; at < end; at += 1) out[at] = out[at - back];
    } else {
      out[at] = letters.read(bits, out, at, state < 7 ? -1 : out[at - distances.last[0] - 1]);
      state = state < 4 ? 0 : state - (state < 10 ? 3 : 6);
      at += 1;
    }
  }
  return out;
}

const FIRST = 0x21; // the sign of the first line that many texts share

/**
 * The files of a pack: a first line has their addresses by kind; then come the shared lines, and the texts in that order.
 * @param {Uint8Array<ArrayBuffer>} content
 */
function filesIn(content) {
  const text = new TextDecoder().decode(content);
  const start = text.indexOf("\n") + 1;
  /** @type {Record<string, string[]>} */ const listed = JSON.parse(text.slice(0, start));
  const [shared, ...texts] = text.slice(start).split("\x02");
  const lines = shared ? shared.split("\n") : [];
  const line = (/** @type {string} */ mark, /** @type {string} */ sign) => lines[Number(sign.codePointAt(0)) - FIRST] ?? mark;
  const places = Object.entries(listed).flatMap(([type, paths]) => paths.map((path) => ({ path, type })));
  return places.map((place, number) => ({ ...place, bytes: new TextEncoder().encode((texts[number] ?? "").replace(/\x01(.)/gu, line)) }));
}
