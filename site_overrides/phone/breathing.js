// Long work in pieces, so that a tap between two of them is answered.

const PIECE = 6;
const QUIET = 40;
const LONGEST_WAIT = 4000;

export const breathe = () => new Promise((done) => setTimeout(done));

/**
 * Does something to each in turn, and breathes whenever that has taken some milliseconds.
 * @template Item @param {Iterable<Item>} items @param {(item: Item) => void} act
 */
export async function inPieces(items, act) {
  let end = performance.now() + PIECE;
  for (const item of items) {
    act(item);
    if (performance.now() < end) continue;
    await breathe();
    end = performance.now() + PIECE;
  }
}

/** Waits until the page has come and has had nothing to do for some milliseconds; some browsers do not tell, there for a second. */
export async function quiet() {
  const end = performance.now() + LONGEST_WAIT;
  for (let idle = 0; idle < QUIET && performance.now() < end;) idle = await idleTime();
}

/** @returns {Promise<number>} */
function idleTime() {
  if (!("requestIdleCallback" in window)) return new Promise((done) => setTimeout(() => done(QUIET), 1000));
  return new Promise((done) => requestIdleCallback((idle) => done(document.readyState === "complete" ? idle.timeRemaining() : 0), { timeout: 500 }));
}
