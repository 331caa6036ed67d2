// Keeps the screen on while it must be: no page can ring on a sleeping phone.

import { isOnHomeScreen } from "./home_screen.js";

/** @type {WakeLockSentinel | undefined} */
let lock;
let asking = false;

/** Before iOS 18.4 a page on the home screen is given the lock, and the screen goes dark all the same (WebKit's bug 254545). */
const sleepsAnyway = isOnHomeScreen && /OS (1[67]|18_[0-3])_/.test(navigator.userAgent);

/** @param {boolean} wanted @param {(able: boolean) => void} tell  called with what came of it */
export async function keepAwake(wanted, tell) {
  if (!wanted) {
    lock?.release();
    lock = undefined;
    return tell(true);
  }
  if (asking || document.visibilityState !== "visible" || (lock && !lock.released)) return;
  asking = true;
  lock = await navigator.wakeLock?.request("screen").catch(() => undefined);
  asking = false;
  tell(Boolean(lock) && !sleepsAnyway);
}
