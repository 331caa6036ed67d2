// What first.js leaves for daylight.js.

interface Window {
  daylight: import("../../../site_overrides/phone/daylight.js").Daylight;
}
