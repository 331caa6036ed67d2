// When work may be done without keeping a change from the screen.

const HIDDEN = 100;

/** Once what was changed is on the screen; in a hidden window, which paints nothing, a moment later. @returns {Promise<void>} */
export const painted = () => new Promise((done) => {
  requestAnimationFrame(() => setTimeout(done));
  setTimeout(done, HIDDEN);
});
