// Makes an element with its marks and what is in it; text stays text.

/**
 * @template {keyof HTMLElementTagNameMap} Name
 * @param {Name} name @param {Record<string, string>} [marks] @param {...(Node | string)} content
 * @returns {HTMLElementTagNameMap[Name]}
 */
export function element(name, marks = {}, ...content) {
  const made = document.createElement(name);
  for (const [mark, value] of Object.entries(marks)) made.setAttribute(mark, value);
  made.append(...content);
  return made;
}
