/* Which visits there are, on the phone and in the plan, and bringing their papers here. */

import { askServer } from "./ask_server.js";
import { fetchPapers } from "./papers.js";
import { countWaiting, daysKept } from "./store.js";
import { dayOf } from "./when.js";

const TODAY = "/visits/crush/today.json";
const state = { kept: [], planned: [], faults: new Map(), today: null, trouble: "", fetching: "", isAsking: false, isLoaded: false };
let hasAsked = false;

/**
 * What is known now.
 * @returns {{visits: Array<{visit, farm, day, planned_start, planned_finish, head_count, isKept, waiting, fault}>,
 *   today: string, trouble: string, fetching: string, isAsking: boolean, isLoaded: boolean}} earliest first
 */
export function dayState() {
  const kept = new Map(state.kept.map((one) => [one.visit, one]));
  const planned = new Map(state.planned.map((one) => [one.id, one]));
  const ids = [...new Set([...planned.keys(), ...kept.keys()])];
  const visits = ids.map((id) => oneVisit(id, kept.get(id), planned.get(id)));
  const order = (one) => `${one.day} ${one.planned_start ?? ""}`;
  const today = state.today ?? dayOf(new Date(), Intl.DateTimeFormat().resolvedOptions().timeZone);
  return { ...state, today, visits: visits.sort((a, b) => order(a).localeCompare(order(b))) };
}

function oneVisit(visit, kept, planned) {
  const { farm, day } = planned ?? kept;
  const { planned_start = null, planned_finish = null, head_count = null } = planned ?? {};
  const waiting = kept ? kept.waiting + kept.refused || kept.begun : 0;
  return { visit, farm, day, planned_start, planned_finish, head_count, isKept: Boolean(kept), waiting, fault: state.faults.get(visit) ?? "" };
}

/** Look at the phone first, then ask for today's and tomorrow's. Once, and again when `anew`. */
export async function askToday(app, anew = false) {
  if (state.isAsking || (hasAsked && !anew)) return;
  [hasAsked, state.isAsking] = [true, true];
  await lookAtKept(app);
  app.redraw();
  const { trouble, body } = await askServer(TODAY);
  state.trouble = trouble || (Array.isArray(body?.visits) ? "" : "server");
  if (!state.trouble) [state.planned, state.today] = [body.visits, body.today];
  state.isAsking = false;
  app.redraw();
}

/** Bring the papers of one visit here. */
export async function fetchOne(app, one) {
  await fetchAll(app, [one]);
}

/** Bring the papers of these here, one after the other: a thin line is soon full. */
export async function fetchAll(app, visits) {
  let came = 0;
  for (const [place, one] of visits.entries()) {
    state.fetching = `Fetching ${one.farm}, ${place + 1} of ${visits.length}.`;
    app.redraw();
    const { trouble } = await fetchPapers(one.visit);
    state.faults.set(one.visit, trouble);
    if (trouble === "no_signal" || trouble === "sign_in") {
      state.trouble = trouble;
      break;
    }
    if (!trouble) came += 1;
  }
  state.fetching = "";
  await app.reload(); // the first papers say who holds this phone
  await lookAtKept(app);
  document.querySelector("h1")?.focus(); // the button is gone
  app.say(came === visits.length ? "On this phone now." : `${came} of ${visits.length} came.`, came === visits.length ? "done" : "due");
}

/* Without a sender nobody else counts: the line on top tells of the whole phone here, for no visit is open. */
async function lookAtKept(app) {
  const [kept, counts] = await Promise.all([daysKept(), countWaiting()]);
  state.kept = kept;
  state.isLoaded = true;
  if (app.sender) return;
  app.status = { ...app.status, waiting: counts.waiting, refused: counts.refused };
}
