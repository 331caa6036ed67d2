// Steps that are round in whatever unit is shown.

/** A step in one system's units as a round number in the other's: 1, 2 or 5 and noughts. @param {number} size */
export function neat(size) {
  const power = 10 ** Math.floor(Math.log10(size) + 1e-9);
  const lead = size / power;
  return Number((power * (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10)).toPrecision(6));
}
