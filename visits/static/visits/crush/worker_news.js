/* Has the page kept on the phone, and notices when a newer version is ready. */

import { WORKER } from "./addresses.js";

let waiting = null;
const hearers = new Set();

/** Be told when a newer version is ready, at once if it is already. @param {() => void} hear */
export function onNewer(hear) {
  hearers.add(hear);
  if (waiting) hear();
}

/**
 * Go over to the newer version: the page loads anew, unless another page of the old one is open.
 * To be called at a safe moment, when nothing is half typed.
 */
export function useNewer() {
  if (!waiting) return;
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waiting.postMessage("take over");
}

async function begin() {
  const place = await navigator.serviceWorker.register(WORKER);
  note(place);
  place.addEventListener("updatefound", () => {
    place.installing?.addEventListener("statechange", () => note(place));
  });
  // An app that stays open for days would never ask for a newer version by itself.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") place.update().catch(() => undefined);
  });
}

function note(place) {
  // The first version of all has nothing to wait for and is not news.
  if (!place.waiting || !navigator.serviceWorker.controller) return;
  waiting = place.waiting;
  hearers.forEach((hear) => hear());
}

// Without it (an old browser, a private window) the page works, but only with signal.
if ("serviceWorker" in navigator) begin().catch((fault) => console.info("not kept for offline:", fault.message));
