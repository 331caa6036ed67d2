// Light or dark: as this phone has it, until somebody chooses. first.js puts it on before anything is painted.

/** @typedef {{key: string, wear: () => void}} Daylight  what first.js leaves here */

export function startDaylight() {
  const { daylight } = window;
  document.querySelector("[data-daylight]")?.addEventListener("click", () => {
    const chosen = document.body.dataset.mdColorScheme === "slate" ? "default" : "slate";
    document.body.dataset.mdColorScheme = chosen;
    try {
      localStorage.setItem(daylight.key, chosen);
    } catch {
      // a private window may keep nothing
    }
  });
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => daylight.wear());
}
