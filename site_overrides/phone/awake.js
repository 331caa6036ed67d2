// Keeps the screen on while it must be: no page can ring on a sleeping phone.

/** @type {WakeLockSentinel | undefined} */
let lock;
let asking = false;

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
  tell(Boolean(lock));
}
