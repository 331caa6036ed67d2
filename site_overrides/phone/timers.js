// Timers. Only the end is kept; what is left is read off the clock, so a sleeping phone or a killed browser loses nothing.

import { prepareSound, ring } from "./alarm.js";
import { keepAwake } from "./awake.js";
import { freeName } from "./timer_names.js";
import { lotOf, roundOf } from "./rounds.js";
import { runOf } from "./runs.js";
import { isSecondTap } from "./second_taps.js";
import { clock, say, span } from "./words_said.js";

/**
 * @typedef {{end: number, label: string, address: string, says?: string}} Timer  `says` is what to do when it is over
 * @typedef {object} Timers
 * @property {(timer: Timer, of?: {of?: string, step?: string, lot?: string}) => Promise<boolean>} start
 * @property {() => number} running
 * @property {() => [string, Timer][]} all  by key, the next to end first
 * @property {(key: string) => void} stop
 */

const PREFIX = "timer/";
const ENDED = "ended/"; // before the key of a timer that can still be brought back
const MOVED = "state/timers moved"; // when they were last moved because the clock was set back
const MOST_SHOWN = 2;
const low = matchMedia("(max-height: 480px)"); // as in frame.css
const LEAST_LINES = 24; // a screen that holds fewer is low too, where text is set large
const LEAST_JUMP = 2000;
const UNDO_FOR = 8000;

/**
 * @param {import("./store.js").Store} store @param {import("./bar.js").Strip} strip @param {import("./log.js").Log} log
 * @param {() => string} run @returns {Timers}
 */
export function startTimers(store, strip, log, run) {
  /** @returns {[string, Timer][]} */
  const all = () => store.entries(PREFIX).sort(([, one], [, other]) => one.end - other.end);

  function stop(/** @type {string} */ key) {
    const timer = store.get(key);
    if (timer?.end > Date.now()) store.put(ENDED + key, { timer, until: Date.now() + UNDO_FOR });
    store.remove(key);
  }

  function bringBack(/** @type {string} */ key) {
    const timer = store.get(ENDED + key)?.timer;
    store.remove(ENDED + key);
    if (timer) store.put(key, timer);
  }

  /** What was ended a moment ago; what was so longer ago, perhaps by a page that is gone, is forgotten. @param {number} now */
  function endedRows(now) {
    return store.entries(ENDED).flatMap(([ended, { timer, until }]) => {
      if (until > now && until <= now + UNDO_FOR) return [endedRow(timer.label, () => bringBack(ended.slice(ENDED.length)))];
      store.remove(ended);
      return [];
    });
  }

  const setBackBy = watchClock();
  let owed = { back: 0, since: 0 };

  /**
   * Whoever sets the clock back would otherwise wait that much longer. A hidden page leaves it to one that is seen, and
   * sees to it itself once it is, if none has. Says whether there was a timer.
   */
  function moveAlong() {
    const { back, since } = owed;
    const moved = all().map(([key, timer]) => /** @type {[string, any]} */ ([key, { ...timer, end: timer.end - back }]));
    owed = { back: 0, since: 0 };
    const before = store.get(MOVED);
    if (!moved.length || (before >= since - LEAST_JUMP && before <= Date.now())) return false;
    store.keep([...moved, [MOVED, Date.now()]]);
    strip.show("clock", [{ text: say("timer_clock_back", { time: span(back / 1000) }) }]);
    setTimeout(() => strip.show("clock", []), 60_000);
    return true;
  }

  function tick() {
    const now = Date.now();
    const back = setBackBy();
    if (back) owed = { back: owed.back + back, since: owed.since || now };
    if (owed.back && document.visibilityState === "visible" && moveAlong()) return; // once they are moved it is called anew
    const timers = all();
    strip.show("ended", endedRows(now));
    strip.show("timers", rowsOf(timers, now, stop));
    keepAwake(timers.length > 0, (able) => strip.show("awake", able ? [] : [{ text: say("timer_may_sleep") }]));
    const over = timers.filter(([, timer]) => timer.end <= now);
    if (over.length) ring({ ...over[0][1], others: over.length - 1 }, () => stop(over[0][0]));
    else ring(null, null);
  }

  setInterval(tick, 500);
  document.addEventListener("visibilitychange", tick);
  for (const kind of ["touchend", "click"]) document.addEventListener(kind, () => all().length && prepareSound(), true); // where a finger goes down is no permission
  store.watch((_, keys) => keys.some((key) => key.startsWith(PREFIX)) && tick());
  tick();

  return {
    start(timer, of = {}) {
      prepareSound();
      const label = freeName(timer.label, all().map(([, running]) => running.label));
      const key = `${PREFIX}${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;
      const [id, kept] = [run(), /** @type {[string, any]} */ ([key, { ...timer, label }])];
      if (!id || runOf(store, id)?.ended) return store.keep([kept]);
      return log.addAll(id, [{ kind: "timer", text: label, ends: Math.round(timer.end), ...of }], [kept]).then(({ saved }) => saved);
    },
    running: () => all().length,
    all,
    stop,
  };
}

/** Says at each call how many milliseconds the clock was set back since the last; sleep looks like the other way. @returns {() => number} */
function watchClock() {
  let [wall, steady] = [Date.now(), performance.now()];
  return () => {
    const [now, ran] = [Date.now(), performance.now()];
    const back = ran - steady - (now - wall);
    [wall, steady] = [now, ran];
    return back > LEAST_JUMP ? back : 0;
  };
}

/** @param {string} label @param {() => void} act @returns {import("./bar.js").Row} */
const endedRow = (label, act) => ({ text: say("timer_ended", { label }), button: say("timer_back"), buttonName: say("timer_back_name", { label }), act });

const isLow = () => low.matches || innerHeight < LEAST_LINES * parseFloat(getComputedStyle(document.documentElement).fontSize);

/** The next to end, and how many more there are. @param {[string, Timer][]} timers @param {number} now @param {(key: string) => void} stop @returns {import("./bar.js").Row[]} */
function rowsOf(timers, now, stop) {
  const shown = timers.length > MOST_SHOWN || isLow() ? timers.slice(0, 1) : timers;
  const rows = shown.map(([key, timer]) => ({
    left: span((timer.end - now) / 1000),
    text: say("timer_row", { label: timer.label, time: clock(timer.end) }),
    button: say("timer_stop"),
    buttonName: say("timer_stop_name", { label: timer.label }),
    act: () => stop(key),
  }));
  const more = timers.length - shown.length;
  if (!more) return rows;
  const others = say("timers_more", { count: more });
  if (isLow()) return [{ left: rows[0].left, text: rows[0].text, button: say("timers_others", { count: more }), buttonName: others, opens: "log/#timers" }];
  return [...rows, { text: others, button: say("timers_all"), opens: "log/#timers" }];
}

/** @param {import("./ticks.js").Page & {timers: Timers}} page */
export function mountTimerButtons({ store, run, timers }) {
  for (const button of /** @type {NodeListOf<HTMLButtonElement>} */ (document.querySelectorAll("[data-timer]"))) {
    const row = /** @type {HTMLElement | null} */ (button.closest("[id^=step-]"));
    const list = /** @type {HTMLElement | null} */ (button.closest("[data-list]"));
    button.addEventListener("click", () => {
      if (isSecondTap(button)) return;
      const lot = list && run() ? lotOf(store, run(), list) : "";
      const later = list && run() && roundOf(store, run(), list) > 1 ? lot : "";
      const of = list && row ? { of: list.dataset.list, step: row.id.slice("step-".length), lot } : {};
      const label = [button.dataset.label, later].filter(Boolean).join(" · ");
      timers.start({ end: Date.now() + Number(button.dataset.seconds) * 1000, label, address: location.pathname + (row ? `#${row.id}` : ""), says: button.dataset.says }, of);
    });
  }
}
