// The alarm: a flashing screen always, sound and vibration where the phone allows them.

import { element } from "./element.js";
import { say, span } from "./words_said.js";

/** @type {AudioContext | undefined} */
let audio;
let [loudUntil, lastHeard] = [0, -1];
const CALM = 700; // milliseconds in which a tap was meant for what the alarm came over
let [shown, shownAt] = ["", 0];

/** Unlocks sound; phones allow that only while a tap is being answered, and what a call cut off on an iPhone stays silent: then it is made anew. */
export function prepareSound() {
  if (!("AudioContext" in window)) return;
  if (audio && (audio.state !== "running" || audio.currentTime === lastHeard)) {
    audio.close().catch(() => undefined);
    audio = undefined;
  }
  if (!audio) [audio, loudUntil] = [new AudioContext(), 0];
  lastHeard = audio.currentTime;
  audio.resume().catch(() => undefined);
}

/** Where a phone can be told, an alarm sounds in spite of a silent switch, and what played before plays on after it. @param {"playback" | "auto"} type */
function claimSound(type) {
  const session = /** @type {{audioSession?: {type: string}}} */ (navigator).audioSession;
  if (session) session.type = type;
}

const title = element("p", { class: "alarm__title", id: "alarm-title" });
const says = element("p", { class: "alarm__says", id: "alarm-says" });
const ago = element("p", { class: "alarm__ago" });
const others = element("p", { class: "alarm__others" });
const off = element("button", { type: "button", class: "button button--large" }, say("alarm_off"));
const place = element("a", { class: "button", href: "#" }, say("alarm_place"));
const alarm = element("dialog", { class: "alarm", "aria-labelledby": "alarm-title", "aria-describedby": "alarm-says" }, title, says, ago, others, off, place);
alarm.addEventListener("click", ignoreEarly, true);
alarm.addEventListener("close", () => {
  document.body.removeAttribute("data-alarm");
  claimSound("auto");
});
document.body.append(alarm);

/**
 * Shows that a timer is over, until it is put off; without a timer, shows nothing.
 * @param {(import("./timers.js").Timer & {others: number}) | null} timer @param {(() => void) | null} putOff
 */
export function ring(timer, putOff) {
  if (!timer || !putOff) return alarm.open && alarm.close();
  title.textContent = timer.label;
  says.textContent = timer.says ?? "";
  says.hidden = !timer.says;
  ago.textContent = say("alarm_ago", { time: span((Date.now() - timer.end) / 1000) });
  others.textContent = timer.others ? say("alarm_others", { count: timer.others }) : "";
  place.href = timer.address;
  off.onclick = place.onclick = () => putOff();
  alarm.oncancel = (event) => void (ignoreEarly(event) || putOff());
  const name = `${timer.label} ${timer.end}`;
  if (!alarm.open || name !== shown) [shown, shownAt] = [name, performance.now()];
  if (!alarm.open) {
    alarm.showModal();
    claimSound("playback");
  }
  document.body.setAttribute("data-alarm", "");
  makeNoise();
}

/** Whether it was; then nothing else hears of it. @param {Event} event */
function ignoreEarly(event) {
  const isEarly = performance.now() - shownAt < CALM;
  if (isEarly) {
    event.preventDefault();
    event.stopImmediatePropagation();
  }
  return isEarly;
}

function makeNoise() {
  navigator.vibrate?.([300, 100, 300]);
  if (!audio || audio.state !== "running" || audio.currentTime < loudUntil) return;
  loudUntil = audio.currentTime + 1;
  for (const [start, pitch] of [[0, 880], [0.25, 1174], [0.5, 880]]) {
    const tone = audio.createOscillator();
    const volume = audio.createGain();
    volume.gain.value = 0.5;
    tone.type = "square";
    tone.frequency.value = pitch;
    tone.connect(volume).connect(audio.destination);
    tone.start(audio.currentTime + start);
    tone.stop(audio.currentTime + start + 0.18);
  }
}
