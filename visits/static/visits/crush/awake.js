/* Keeps the screen from going dark while the crush page is open, on phones that can (Screen Wake Lock, W3C). */

let isWanted = false;
let lock = null;
let tell = () => {};

/** @returns {boolean} whether this phone can */
export function canStayAwake() {
  return "wakeLock" in navigator;
}

/** @returns {boolean} whether the screen is held awake this moment */
export function isAwake() {
  return lock !== null && !lock.released;
}

/**
 * Hold the screen awake, or let it go. The system takes the hold away whenever the page is out of sight; it is
 * asked for again when the page is back.
 * @param {boolean} wanted
 * @param {() => void} changed called whenever the hold was gained or lost
 * @returns {Promise<void>}
 */
export async function stayAwake(wanted, changed = () => {}) {
  isWanted = wanted;
  tell = changed;
  if (wanted) return hold();
  await lock?.release();
  lock = null;
}

async function hold() {
  if (!canStayAwake() || !isWanted || document.visibilityState !== "visible" || isAwake()) return;
  try {
    lock = await navigator.wakeLock.request("screen");
    lock.addEventListener("release", () => tell());
    tell();
  } catch {
    lock = null; // battery saver and some browsers refuse: the phone page says that it is not held
  }
}

document.addEventListener("visibilitychange", hold);
