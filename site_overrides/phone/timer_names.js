/**
 * What timers are called, so that several of the same kind can be told apart.
 *
 * @param {string} name @param {string[]} taken  the names of those that run
 */
export function freeName(name, taken) {
  if (!taken.includes(name)) return name;
  let number = 2;
  while (taken.includes(`${name} · ${number}`)) number += 1;
  return `${name} · ${number}`;
}
