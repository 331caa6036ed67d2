// Timers. Only the end is kept; what is left is read off the clock, so a sleeping phone or a killed browser loses nothing.

import { prepareSound, ring } from "./alarm.js";
import { keepAwake } from "./awake.js";
import { clock, say, span } from "./words_said.js";

/**
 * @typedef {{end: number, label: string, address: string}} Timer
 * @typedef {{start: (timer: Timer) => void, running: () => number}} Timers
 */

const PREFIX = "timer/";

/** @param {import("./store.js").Store} store @param {import("./bar.js").Strip} strip @returns {Timers} */
export function startTimers(store, strip) {
  const all = () => store.entries(PREFIX).sort(([, one], [, other]) => one.end - other.end);

  function tick() {
    const now = Date.now();
    const timers = all();
    strip.show("timers", timers.map(([key, timer]) => ({
      left: span((timer.end - now) / 1000),
      text: say("timer_row", { label: timer.label, time: clock(timer.end) }),
      button: say("timer_stop"),
      act: () => store.remove(key),
    })));
    keepAwake(timers.length > 0, (able) => strip.show("awake", able ? [] : [{ text: say("timer_may_sleep") }]));
    const over = timers.find(([, timer]) => timer.end <= now);
    if (over) ring(over[1].label, over[1].end, () => store.remove(over[0]));
    else ring("", 0, null);
  }

  setInterval(tick, 500);
  document.addEventListener("visibilitychange", tick);
  store.watch((key) => key.startsWith(PREFIX) && tick());
  tick();
  return {
    start: (timer) => {
      prepareSound();
      store.put(`${PREFIX}${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`, timer);
    },
    running: () => all().length,
  };
}

/** @param {{timers: Timers}} page */
export function mountTimerButtons({ timers }) {
  for (const button of /** @type {NodeListOf<HTMLButtonElement>} */ (document.querySelectorAll("[data-timer]"))) {
    button.addEventListener("click", () => timers.start({
      end: Date.now() + Number(button.dataset.seconds) * 1000,
      label: button.dataset.label ?? "",
      address: location.pathname,
    }));
  }
}
