// Runs before anything is painted: light or dark, as chosen last, else as the phone has it.
// And what is tapped is kept, unless the programs do not come or cannot run here: then the page says that it is not.
// A plain script, for a module would come too late. Sealing puts it into the pages: nothing is painted before it has come.

window.daylight = {
  key: `${new URL(/** @type {HTMLScriptElement} */ (document.currentScript).dataset.site ?? "", location.href).pathname} daylight`,
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
setTimeout(() => {
  if (!("ready" in document.documentElement.dataset)) document.documentElement.className = "no-js";
}, 10_000);
