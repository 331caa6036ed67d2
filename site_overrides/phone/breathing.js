// Long work in pieces, so that a tap between two of them is answered.

export const breathe = () => new Promise((done) => setTimeout(done));
