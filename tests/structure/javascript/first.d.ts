// What first.js leaves for daylight.js and early_taps.js.

interface Window {
  daylight: import("../../../site_overrides/phone/daylight.js").Daylight;
  early: import("../../../site_overrides/phone/early_taps.js").Early;
}
