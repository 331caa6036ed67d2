// Runs before anything is painted: light or dark, as chosen last, else as the phone has it.
// A plain script, for a module would come too late; its own file, so that the policy allows no script inside a page.

window.daylight = {
  key: `${new URL("../", /** @type {HTMLScriptElement} */ (document.currentScript).src).pathname} daylight`,
  wear() {
    let chosen = null;
    try {
      chosen = localStorage.getItem(this.key);
    } catch {
      // a private window may keep nothing
    }
    document.body.dataset.mdColorScheme = chosen ?? (matchMedia("(prefers-color-scheme: dark)").matches ? "slate" : "default");
  },
};
window.daylight.wear();
document.documentElement.className = "js";
