/* The visits on this phone and those of today and tomorrow; fetching their papers while there is signal. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { SIGN_IN } from "../addresses.js";
import { askToday, dayState, fetchAll, fetchOne } from "../day_fetch.js";
import { clock, daysAfter, dayWords } from "../when.js";
import { things } from "../sign_off_words.js";

const TROUBLE = {
  no_signal: "No signal: what lies on this phone opens all the same. Today's list comes when there is signal.",
  sign_in: "You are signed out. What lies on this phone is safe; sign in to fetch more and to send.",
  not_yours: "You may not see these visits. Ask the office.",
  server: "The office does not answer just now. Try again later; nothing is lost.",
};

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  askToday(app);
  const state = dayState();
  const missing = state.visits.filter((one) => !one.isKept);
  return html`
    <h1 tabindex="-1">${heading(state, missing)}</h1>
    ${trouble(app, state)}
    ${toFetch(app, state, missing)}
    ${byDay(state).map(([day, visits]) => html`<h2>${dayHeading(day, state.today)}</h2>
      <ul class="day-visits">${visits.map((one) => visitLine(app, one, state, missing))}</ul>`)}
    ${empty(state)}
    <nav class="actions" aria-label="More"><a class="act" href="#/phone">This phone</a> <a class="act" href="/visits/">All visits</a></nav>`;
}

function heading({ visits, isAsking, isLoaded }, missing) {
  if (!visits.length) return isAsking || !isLoaded ? "Looking for your visits" : "No visit on this phone";
  if (missing.length === visits.length) return `${things(visits.length, "visit")}, ${visits.length === 1 ? "not" : "none"} on this phone yet`;
  if (!missing.length) return `${things(visits.length, "visit")}, ${visits.length === 1 ? "it is" : "all"} on this phone`;
  return `${things(visits.length, "visit")}, ${missing.length} not on this phone yet`;
}

function trouble(app, { trouble: what }) {
  if (!what) return nothing;
  const next = encodeURIComponent("/visits/crush/");
  return html`<div class="empty" role="status"><p>${TROUBLE[what] ?? TROUBLE.server}</p>
    <div class="actions">${what === "sign_in"
      ? html`<a class="act act-main" href="${SIGN_IN}?next=${next}">Sign in</a>`
      : html`<button type="button" @click=${() => askToday(app, true)}>Look again</button>`}</div></div>`;
}

function toFetch(app, { fetching, trouble: what }, missing) {
  if (fetching) return html`<p role="status">${fetching}</p>`;
  if (!missing.length || what) return nothing;
  return html`<div class="actions"><button type="button" class="act-main" @click=${() => fetchAll(app, missing)}>
      ${missing.length === 1 ? "Fetch its papers" : `Fetch the papers of all ${missing.length}`}</button></div>
    <p class="quiet">Fetch them where there is signal: from then on the day works without.</p>`;
}

function byDay({ visits }) {
  const days = new Map();
  for (const one of visits) days.set(one.day, [...(days.get(one.day) ?? []), one]);
  return [...days].sort(([a], [b]) => a.localeCompare(b));
}

function dayHeading(day, today) {
  if (day === today) return `Today, ${dayWords(day)}`;
  return day === daysAfter(today, 1) ? `Tomorrow, ${dayWords(day)}` : dayWords(day);
}

/* Where only one is to be fetched, the main button says so already. */
function visitLine(app, one, { fetching, trouble: what }, missing) {
  const isOffered = one.isKept || missing.length > 1;
  return html`<li>
    <a class="day-visit" href="/visits/${one.visit}/crush/"><b>${one.farm}</b>${hours(one) ? html`<span>${hours(one)}</span>` : nothing}</a>
    <p>${one.isKept
      ? html`<span class="mark mark-done">On this phone</span>`
      : html`<span class="mark mark-planned">Not on this phone yet</span>`}
      ${one.waiting ? html`<span class="mark mark-due">${things(one.waiting, "thing")} not sent</span>` : nothing}
      ${one.fault ? html`<span class="mark mark-urgent">${TROUBLE[one.fault] ?? TROUBLE.server}</span>` : nothing}</p>
    ${what || fetching || !isOffered ? nothing : html`<button type="button" @click=${() => fetchOne(app, one)}>
      ${one.isKept ? "Fetch its papers again" : "Fetch its papers"}<span class="unseen">: ${one.farm}</span></button>`}
  </li>`;
}

function hours({ planned_start, planned_finish, head_count }) {
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const from = planned_start ? clock(planned_start, here) : "";
  const till = planned_finish ? ` to ${clock(planned_finish, here)}` : "";
  const cows = head_count ? `, ${things(head_count, "cow")}` : "";
  return `${from}${till}${cows}`;
}

function empty({ visits, isLoaded, isAsking, trouble: what }) {
  if (visits.length || !isLoaded || isAsking || what) return nothing;
  return html`<div class="empty"><p>Nothing is planned for you today or tomorrow, and no visit lies on this phone.</p>
    <p>Once the office has planned one, open this page with signal.</p></div>`;
}
