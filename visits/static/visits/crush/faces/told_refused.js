/* What the office did not take: which field, why, and the two ways out of it. Nothing else waits for it. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { numberOf } from "../day_list.js";
import { faultPlace } from "../fault_words.js";
import { keepSafely } from "../keep_safely.js";
import { mend, throwAway } from "../mend.js";
import { sendAgain } from "../store.js";
import { clock } from "../when.js";
import { focusOn } from "./focus.js";
import { mark } from "./marks.js";

const NAMES = { wash: "Wash-down", kit: "Kit used", blade: "Knives", sign_off: "Sign-off" };
const look = { asked: null };

/** @param {object} app @param {object[]} refused writings and photos */
export function refusedPart(app, refused) {
  return html`<h2>Not taken by the office</h2>
    <p>Kept on this phone until you mend it or throw it away. Everything else goes on its way.</p>
    ${againPart(app, refused.filter(isRefusedWhole))}
    <ul class="t-list">${refused.map((one) => row(app, one))}</ul>`;
}

/* Nothing in it is wrong: the visit was put off or called off, say. Once the office has seen to that, it can go as it is. */
function isRefusedWhole({ faults }) {
  return faults.every(({ field }) => field === "");
}

function againPart(app, whole) {
  if (whole.length === 0) return nothing;
  const words = whole.length === 1 ? "Send it again as it is" : `Send ${whole.length} again as they are`;
  const again = () => keepSafely(app, () => sendAgain(whole.map((one) => one.uid)), "Waiting to be sent again.");
  return html`<p>Was the visit put right at the office since?</p>
    <div class="actions"><button type="button" @click=${again}>${words}</button></div>`;
}

function row(app, one) {
  const name = nameOf(app, one);
  return html`<li class="t-row">
    <h3>${mark({ kind: "urgent", word: name })}</h3>
    <p>Noted at ${clock(one.made_at ?? one.taken_at, app.papers.visit.zone)}.</p>
    <ul>${one.faults.map((fault) => html`<li>${faultWords(app, one, fault)}</li>`)}</ul>
    ${look.asked === one.uid ? question(app, one, name) : choices(app, one, name)}
  </li>`;
}

function nameOf(app, one) {
  if (!one.kind) return `Photo, ${app.papers.labels.feet[one.foot] ?? "whole cow"}`;
  return one.kind === "cow" ? `Cow ${numberOf(one.cowKey, app.papers, app.kept)}` : NAMES[one.kind];
}

function faultWords(app, one, { field, reason }) {
  const place = faultPlace(field, one.content, app.papers);
  return place ? html`<b>${place}</b>: ${reason}` : reason;
}

function choices(app, one, name) {
  const word = one.kind === "cow" ? "Mend her" : "Mend it";
  return html`<div class="actions">
    ${one.kind ? html`<button type="button" class="t-mend" aria-label=${`${word}: ${name}`} @click=${() => mend(app, one)}>${word}</button>` : nothing}
    <button type="button" id=${`t-${one.uid}`} class="act-stop" aria-label=${`Throw it away: ${name}`} @click=${() => ask(app, one)}>Throw it away</button>
  </div>`;
}

function question(app, one, name) {
  return html`<div class="t-ask" role="group" aria-label=${`Throw away: ${name}?`}>
    <p>It is on this phone only. Thrown away, it is gone for good.</p>
    <div class="actions">
      <button type="button" id="t-keep" @click=${() => keep(app, one)}>Keep it</button>
      <button type="button" class="act-stop" @click=${() => drop(app, one, name)}>Yes, throw it away</button>
    </div></div>`;
}

function ask(app, one) {
  look.asked = one.uid;
  app.redraw();
  focusOn("t-keep");
}

function keep(app, one) {
  look.asked = null;
  app.redraw();
  focusOn(`t-${one.uid}`);
}

async function drop(app, one, name) {
  look.asked = null;
  await keepSafely(app, () => throwAway(app, one), `${name}: thrown away.`);
  focusOn("main");
}
