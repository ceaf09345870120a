/* The watch over whoever works alone: says every few minutes that this phone has a network, shows the question whether
   all is well, and sends the answer; without a network as soon as there is one, with its age. */

import { heardOf } from "./addresses.js";
import { askServer } from "./ask_server.js";

const BEAT_MS = 180_000;
const AGAIN_MS = 15_000;
// Until the papers are here nothing is sent: they say whether the business has the watch on.
const NO_PAPERS_MS = 2_000;

/**
 * @param {object} app of the crush page; `app.watch` becomes {asks, farm, until, isTold, said, isUnheard} for the box
 * @returns {{say: (well: "more"|"done") => Promise<void>, beat: () => Promise<void>, stop: () => void}}
 */
export function startWatch(app) {
  let timer = 0;
  let tap = null; // {well, at}: said here, and not heard there yet
  let running = null;

  const later = (ms) => {
    clearTimeout(timer);
    timer = setTimeout(beat, ms);
  };
  function beat() {
    running ??= once().finally(() => {
      running = null;
      later(app.papers ? (tap ? AGAIN_MS : BEAT_MS) : NO_PAPERS_MS);
    });
    return running;
  }
  async function once() {
    if (!app.papers?.is_watched && !tap) return;
    const sent = tap;
    const { trouble, body } = await askServer(heardOf(app.visit), { method: "POST", body: wordsOf(sent) });
    if (!trouble && body && "watch" in body) {
      if (tap === sent) tap = null;
      app.watch = shownAs(body.watch, tap);
    } else {
      app.watch = { ...(app.watch ?? {}), isUnheard: Boolean(tap) };
    }
    app.redraw();
  }
  function say(well) {
    tap = { well, at: Date.now() };
    app.watch = { ...(app.watch ?? {}), said: well, isUnheard: false };
    app.redraw();
    return running ? running.then(beat) : beat();
  }
  const again = () => document.visibilityState === "visible" && beat();
  window.addEventListener("online", beat);
  document.addEventListener("visibilitychange", again);
  return {
    say,
    beat,
    stop: () => {
      clearTimeout(timer);
      window.removeEventListener("online", beat);
      document.removeEventListener("visibilitychange", again);
    },
  };
}

function wordsOf(tap) {
  if (!tap) return "{}";
  return JSON.stringify({ well: tap.well, ago: Math.max(0, (Date.now() - tap.at) / 1000) });
}

function shownAs(watch, tap) {
  return { asks: Boolean(watch?.asked_at), farm: watch?.farm ?? "", until: watch?.answer_until, isTold: watch?.state === "told", said: tap?.well ?? "" };
}
