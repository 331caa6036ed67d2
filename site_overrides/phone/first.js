// Runs before anything is painted: the theme's own helpers, and day or night as chosen last.
// A plain script, for a module would come too late; its own file, so that the policy allows no script inside a page.

var __md_scope = new URL("../", document.currentScript.src);
var __md_hash = (text) => [...text].reduce((sum, letter) => (sum << 5) - sum + letter.charCodeAt(0), 0);
var __md_get = (key, storage = localStorage, scope = __md_scope) => JSON.parse(storage.getItem(`${scope.pathname}.${key}`));
var __md_set = (key, value, storage = localStorage, scope = __md_scope) => {
  try {
    storage.setItem(`${scope.pathname}.${key}`, JSON.stringify(value));
  } catch {
    // a private window may keep nothing
  }
};

for (const [key, value] of Object.entries(__md_get("__palette")?.color ?? {})) document.body.setAttribute(`data-md-color-${key}`, value);
