/* What there is to know of this phone: what waits on it, which visits lie on it, whether it is safe there. */

import { html, nothing } from "../../trimops/lib/lit-html.js";
import { forgetUnsaid } from "./sign_off_form.js";
import { things } from "./sign_off_words.js";
import { countWaiting, daysKept, forgetDay, onChange } from "./store.js";
import { dayWords } from "./when.js";

const EMPTY = { waiting: null, days: null, isPersisted: null, usedMb: null, version: "" };
const CACHE = "crush-"; // the worker's name for what it keeps, with the version behind it

let facts = EMPTY;
let isLooking = false;
let isHearing = false;
let asked = null; // the visit whose clearing was asked for once
let keptBack = null; // the visit that was asked to go and may not

/** What was found out last. */
export function phoneFacts() {
  return facts;
}

/** Find it out (anew), then draw again. Called with each drawing: looks once, and again after each change. */
export async function lookAtPhone(app, anew = false) {
  if (!isHearing) onChange(() => lookAtPhone(app, true));
  isHearing = true;
  if (isLooking || (facts !== EMPTY && !anew)) return;
  isLooking = true;
  try {
    const [waiting, days, isPersisted, usedMb, version] = await Promise.all([
      countWaiting(), daysKept(), persisted(), used(), shellVersion(),
    ]);
    facts = { waiting, days, isPersisted, usedMb, version };
  } finally {
    isLooking = false;
  }
  app.redraw();
}

async function persisted() {
  return (await navigator.storage?.persisted?.()) ?? null;
}

async function used() {
  const usage = (await navigator.storage?.estimate?.())?.usage;
  return usage === undefined ? null : Math.round(usage / 100_000) / 10;
}

async function shellVersion() {
  const names = "caches" in window ? await caches.keys() : [];
  return names.filter((name) => name.startsWith(CACHE)).map((name) => name.slice(CACHE.length)).join(", then ");
}

/** The visits on this phone, each with a way to let it go. */
export function keptVisits(app, clear) {
  const { days } = facts;
  if (!days) return html`<h2>Visits on this phone</h2><p>Looking.</p>`;
  return html`<h2 id="kept-visits" tabindex="-1">${days.length ? `Visits on this phone: ${days.length}` : "No visit is on this phone"}</h2>
    <ul class="bench-list">${days.map((day) => keptLine(app, day, clear))}</ul>`;
}

function keptLine(app, day, clear) {
  const name = `${day.farm}, ${dayWords(day.day)}`;
  const waits = day.waiting + day.refused || day.begun;
  const held = heldWords(app, day);
  return html`<li>
    <p><a class="cow-line" href="/visits/${day.visit}/crush/"><b>${day.farm}</b></a> ${dayWords(day.day)}
      ${waits ? html`<span class="mark mark-due">${things(waits, "thing")} not sent</span>` : html`<span class="mark mark-done">All sent</span>`}</p>
    ${asked === day.visit
      ? html`<p>Clear ${name}? All of it was sent; its papers can be fetched again with signal.</p>
        <div class="actions">
          <button type="button" class="act-stop" id="clear-${day.visit}" @click=${() => clear(day)}>Clear it<span class="unseen">: ${name}</span></button>
          <button type="button" @click=${() => leave(app, day)}>Leave it<span class="unseen">: ${name}</span></button>
        </div>`
      : html`<button type="button" id="clear-${day.visit}" @click=${() => clear(day)}>Clear this visit from the phone<span class="unseen">: ${name}</span></button>`}
    ${keptBack === day.visit && held ? html`<p class="mark mark-urgent">${day.farm} stays: ${held}</p>` : nothing}
  </li>`;
}

function leave(app, day) {
  asked = null;
  app.redraw();
  document.getElementById(`clear-${day.visit}`)?.focus();
}

/**
 * Let a visit go, after asking once. What waits, and cows that were begun, are only here: refused, with the reason.
 * @param {object} app
 * @param {object} day as `daysKept` gives it
 */
export async function clearKept(app, day) {
  keptBack = null;
  const held = heldWords(app, day);
  if (held) return refuse(app, day, held);
  if (asked !== day.visit) {
    asked = day.visit;
    app.redraw();
    document.getElementById(`clear-${day.visit}`)?.focus();
    return undefined;
  }
  asked = null;
  const { isGone, waiting, refused } = await forgetDay(day.visit);
  if (!isGone) return refuse(app, day, heldWords(app, { ...day, waiting, refused, begun: 0 }));
  await forgetUnsaid(app, day.visit);
  if (day.visit === app.visit) return location.assign("/visits/crush/");
  await lookAtPhone(app, true);
  app.say(`${day.farm} is cleared from this phone.`, "done");
  return document.getElementById("kept-visits")?.focus();
}

/* Said at the button too: the thumb may be far below where things are said. */
function refuse(app, day, held) {
  asked = null;
  keptBack = day.visit;
  app.say(`${day.farm} stays: ${held}`, "urgent");
}

function heldWords(app, { visit, waiting, refused, begun }) {
  const here = waiting || begun;
  if (here) return `${things(here, "thing")} of it ${here === 1 ? "waits" : "wait"} to be sent. Clear it after that.`;
  if (refused) return `${things(refused, "thing")} of it ${refused === 1 ? "was" : "were"} not taken. Mend or let go of that first.`;
  const drafts = visit === app.visit ? app.kept.drafts.size : 0;
  return drafts ? `${things(drafts, "cow")} of it ${drafts === 1 ? "is" : "are"} begun and not noted yet.` : "";
}
