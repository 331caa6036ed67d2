// Runs before anything is painted: light or dark, as chosen last, else as the phone has it.
// And what is tapped is kept, unless the programs do not come or cannot run here: then the page says that it is not.
// A plain script, for a module would come too late. Sealing puts it into the pages: nothing is painted before it has come.

{
  const { site, programs } = /** @type {HTMLScriptElement} */ (document.currentScript).dataset;

  window.daylight = {
    key: `${new URL(site ?? "", location.href).pathname} daylight`,
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

  const start = (/** @type {string} */ address) => {
    const main = document.createElement("script");
    main.type = "module";
    main.src = address;
    document.head.append(main);
  };
  // What this phone keeps comes at once; from the host, the page is seen before its programs take their share of a slow line.
  if (programs && (navigator.serviceWorker?.controller || document.hidden)) start(programs);
  else if (programs) {
    const seen = () => {
      painting?.disconnect();
      clearTimeout(unseen);
      start(programs);
    };
    const tellsPaint = window.PerformanceObserver?.supportedEntryTypes?.includes("paint");
    const painting = tellsPaint ? new PerformanceObserver(seen) : undefined;
    painting?.observe({ type: "paint", buffered: true });
    const unseen = setTimeout(seen, tellsPaint ? 1000 : 0);
  }

  // What is tapped before the programs listen waits for them, until the page says that nothing is kept. What programs
  // made themselves listens at once.
  /** @type {Map<HTMLElement, boolean | undefined>} */ const taps = new Map();
  const hear = (/** @type {Event} */ { target }) => {
    const thing = /** @type {HTMLInputElement | null} */ (/** @type {Element} */ (target).closest("button, input[type=checkbox]"));
    if (thing && !thing.closest(".strip, dialog")) taps.set(thing, thing.checked);
  };
  const deaf = () => removeEventListener("click", hear);
  addEventListener("click", hear);
  window.early = { taps, deaf };

  setTimeout(() => {
    if ("ready" in document.documentElement.dataset) return;
    document.documentElement.className = "no-js";
    deaf();
    taps.clear();
  }, 10_000);
}
