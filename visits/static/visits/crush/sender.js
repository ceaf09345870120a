/* Sends what waits whenever there is a way: at once after a tap, when the signal comes back, when the page is looked at
   again, and else after pauses that grow. Asks now and then what other phones wrote. */

import { sendRound } from "./send_round.js";
import { statusNow } from "./send_status.js";
import { onChange } from "./store.js";

const FIRST_PAUSE_MS = 2_000;
const LONGEST_PAUSE_MS = 60_000;
const LOOK_AGAIN_MS = 60_000;
// A tap is answered first; the network comes after.
const AFTER_A_TAP_MS = 400;
const OTHER_TAB_MS = 5_000;
const PAUSES = { sign_in: 20_000, other_person: 300_000, not_yours: 300_000 };

/**
 * @param {number|null} visit sent first; null: only whatever waits on this phone
 * @param {(status: {waiting: number, refused: number, is_sending: boolean, sent_at: string|null, photos: number,
 *   trouble: ""|"no_signal"|"sign_in"|"server"|"not_yours"|"other_person",
 *   others_wait: {name: string, farm: string, waiting: number}[]}) => void} notify
 * @param {() => void} onOthers called when another phone's writings came
 * @returns {{sendNow: () => Promise<void>, stop: () => void}}
 */
export function startSender(visit, notify, onOthers = () => undefined) {
  const state = { visit, trouble: "", isSending: false, sentAt: null, pause: FIRST_PAUSE_MS, passOver: new Set() };
  let timer = 0;
  let running = null;
  let isStopped = false;
  let isWantedAgain = false;

  const tellStatus = async () => {
    const status = await statusNow(state);
    state.waiting = status.waiting + status.begun;
    if (!isStopped) notify(status);
  };
  const later = (ms) => {
    clearTimeout(timer);
    if (!isStopped) timer = setTimeout(inItsTime, ms);
  };
  /* Nobody looks and nothing waits: what others wrote can wait too. */
  const inItsTime = () => {
    const isIdle = document.visibilityState === "hidden" && !state.trouble && !state.waiting;
    return isIdle ? later(LOOK_AGAIN_MS) : sendNow();
  };
  // While a round runs, what was put down may have missed it: its end must not wait for the long pause.
  const soon = () => {
    if (running) isWantedAgain = true;
    else later(AFTER_A_TAP_MS);
  };
  async function sendNow() {
    if (isStopped) return undefined;
    if (running) {
      isWantedAgain = true;
      return running;
    }
    clearTimeout(timer);
    running = once().finally(() => {
      running = null;
      later(isWantedAgain && !state.trouble ? AFTER_A_TAP_MS : pauseAfter(state));
      isWantedAgain = false;
    });
    return running;
  }
  async function once() {
    state.isSending = true;
    await tellStatus();
    const round = await sendRound(state).catch(broken);
    state.isSending = false;
    if (round) Object.assign(state, { trouble: round.trouble, waitMs: round.waitMs });
    else state.waitMs = OTHER_TAB_MS;
    if (round?.isAsked) state.sentAt = new Date().toISOString();
    if (round?.hasNews) onOthers();
    await tellStatus();
  }

  const ends = [
    onChange((news) => {
      tellStatus().catch(broken);
      if (news.what === "written" && news.isHere && state.trouble === "") soon();
      if (news.what === "person") soon();
    }),
    listen(window, "online", sendNow),
    listen(window, "focus", () => state.trouble && sendNow()),
    listen(document, "visibilitychange", () => document.visibilityState === "visible" && sendNow()),
  ];
  sendNow();
  return {
    sendNow,
    stop: () => {
      isStopped = true;
      clearTimeout(timer);
      ends.forEach((end) => end());
    },
  };
}

function pauseAfter(state) {
  if (state.trouble === "") {
    state.pause = FIRST_PAUSE_MS;
    return spread(state.waitMs || LOOK_AGAIN_MS);
  }
  const pause = PAUSES[state.trouble] ?? state.pause;
  state.pause = Math.min(state.pause * 2, LONGEST_PAUSE_MS);
  return Math.max(spread(pause), state.waitMs ?? 0);
}

/* Not all phones of a yard at the same moment. */
function spread(ms) {
  return ms * (0.75 + Math.random() * 0.5);
}

function broken(fault) {
  console.info("not sent:", fault?.message ?? fault);
  return { trouble: "server", waitMs: 0, hasNews: false };
}

function listen(target, name, hear) {
  target.addEventListener(name, hear);
  return () => target.removeEventListener(name, hear);
}
