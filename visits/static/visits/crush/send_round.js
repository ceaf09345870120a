/* One round of sending: make sure who is signed in, then send this visit's day and whatever else waits of theirs. */

import { fetchPapers } from "./papers.js";
import { sendDay } from "./send_day.js";
import { everyDay, isHeld } from "./store_counts.js";
import { dayOf, phoneNow } from "./store_day.js";
import { keyOf, sittingHere } from "./store_seat.js";
import { sessionToken } from "./token.js";

const LOCK = "trimops-crush-send";
const PASS_OVER_MS = 600_000;
const PAPERS_OLD_MS = 600_000;
const NO_ANSWER = new Set(["no_signal", "sign_in"]);

/**
 * @param {{visit: number|null, passOver: Set<string>, passedAt?: number, isRefreshed?: boolean}} state of the sender
 * @returns {Promise<{trouble: string, waitMs: number, hasNews: boolean, isAsked: boolean} | null>} null: another tab is
 *   at it; `isAsked`: the server has answered
 */
export function sendRound(state) {
  if (!navigator.onLine) return Promise.resolve(ended("no_signal"));
  if (!navigator.locks) return sendAll(state);
  // Two tabs at once would do no harm, only twice the work: the other one's answers show here too.
  return navigator.locks.request(LOCK, { ifAvailable: true }, (lock) => (lock ? sendAll(state) : null));
}

function ended(trouble, waitMs = 0, hasNews = false) {
  return { trouble, waitMs, hasNews };
}

async function sendAll(state) {
  tryAgainNowAndThen(state);
  const visits = await visitsToSend(state.visit);
  if (visits.length === 0) return ended("");
  const trouble = await makeSureWho(state, visits);
  if (trouble) return ended(trouble);
  let hasNews = false;
  let worst = ended("");
  for (const visit of visits) {
    const round = await sendOne(visit, state);
    hasNews ||= round.hasNews;
    if (round.trouble) worst = round;
    // Without signal or sign-in the next day would fare no better; a visit that is not ours holds up no other.
    if (round.trouble && round.trouble !== "not_yours") break;
  }
  const left = worst.trouble || (await missing(state)) || (state.passOver.size > 0 ? "server" : "");
  return { ...worst, trouble: left, hasNews, isAsked: !left };
}

/* Why the visit on the screen is not on the phone yet, "" when it is. */
async function missing({ visit, papersTrouble }) {
  if (visit === null || !papersTrouble) return "";
  return (await dayOf(keyOf(visit)))?.papers_at ? "" : papersTrouble;
}

/* What the server could not read is not sent with every round; but a mended server shall get it. */
function tryAgainNowAndThen(state) {
  if (Date.now() - (state.passedAt ?? 0) < PASS_OVER_MS) return;
  state.passOver.clear();
  state.passedAt = Date.now();
}

/** This visit first, then the others of the same person of which something waits. */
async function visitsToSend(visit) {
  const waiting = (await everyDay((day) => day.who === sittingHere())).filter(isHeld);
  const others = waiting.map((day) => day.visit).filter((other) => other !== visit);
  return visit === null ? others : [visit, ...others];
}

/* Each sign-in brings a new token. So while the token is the one that came with the papers, the same person is signed
   in as then; after that the papers are fetched anew, and say who it is now. */
async function makeSureWho(state, visits) {
  const phone = await phoneNow();
  const isKnown = phone.who && phone.token && phone.token === sessionToken();
  if (isKnown && !(await needsPapers(state))) return afterPapers();
  for (const visit of visits) {
    const { trouble } = await fetchPapers(visit);
    if (visit === state.visit) Object.assign(state, { papersTrouble: trouble, isRefreshed: !NO_ANSWER.has(trouble) });
    if (!trouble) return afterPapers();
    // Who it is is known, only the papers could not be had anew: that holds up nothing that was put down.
    if (isKnown && (trouble === "server" || trouble === "not_yours")) return afterPapers();
    if (trouble !== "not_yours" || visit === visits.at(-1)) return trouble;
  }
  return "";
}

async function afterPapers() {
  // The first papers of all: the page has loaded for nobody yet, and loads again now.
  if (sittingHere() === "") return "";
  return (await phoneNow()).who === sittingHere() ? "" : "other_person";
}

/* Until they are here, and once after the page was opened unless they are fresh: queue, blocks and figures may have changed. */
async function needsPapers(state) {
  if (state.visit === null) return false;
  const at = (await dayOf(keyOf(state.visit)))?.papers_at;
  return !at || (!state.isRefreshed && Date.now() - Date.parse(at) > PAPERS_OLD_MS);
}

async function sendOne(visit, state) {
  const first = await sendDay(keyOf(visit), visit, state.passOver);
  if (first.trouble !== "token") return first;
  // The token was refused: papers bring a fresh one. Refused again, something stands between us and the server.
  const { trouble } = await fetchPapers(visit);
  if (trouble) return ended(trouble);
  const who = await afterPapers();
  if (who) return ended(who);
  const second = await sendDay(keyOf(visit), visit, state.passOver);
  return second.trouble === "token" ? ended("server", second.waitMs, second.hasNews) : second;
}
