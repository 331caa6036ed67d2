// What stands behind the `#` of the address.

/** Empty where it is no text, as in `#50%`: addresses come from anywhere. */
export function addressMark() {
  try {
    return decodeURIComponent(location.hash.slice(1));
  } catch {
    return "";
  }
}
