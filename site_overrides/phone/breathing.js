// Long work in pieces, so that a tap between two of them is answered.

const PIECE = 6;

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
