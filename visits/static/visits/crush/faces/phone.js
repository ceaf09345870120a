/* This phone: what it does at a tap, what waits on it, which visits lie on it, and letting one of them go. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { canStayAwake, isAwake, stayAwake } from "../awake.js";
import { isOutdoor, wearOutdoor } from "../outdoor.js";
import { clearKept, keptVisits, lookAtPhone, phoneFacts } from "../phone_facts.js";
import { things } from "../sign_off_words.js";
import { countWaiting, putPhone } from "../store.js";
import { canShake, canSound, tick } from "../tick.js";
import { useNewer } from "../worker_news.js";

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  lookAtPhone(app);
  const facts = phoneFacts();
  return html`
    <h1 tabindex="-1">${heading(facts.waiting)}</h1>
    ${waits(app, facts.waiting)}
    <h2>At a tap</h2>
    ${switches(app)}
    <h2>Is it safe here?</h2>
    <p>${stayWords(facts)}</p>
    ${facts.isPersisted === false ? html`<p><button type="button" @click=${() => askToStay(app)}>Ask the browser to promise it</button></p>` : nothing}
    ${keptVisits(app, (day) => clearKept(app, day))}
    <h2>Version</h2>
    <p>${facts.version ? `This page: ${facts.version}.` : "The page itself is not on this phone yet: open it once with signal."}</p>
    ${app.isNewer ? html`<p><button type="button" @click=${useNewer}>Go over to the newer version</button></p>` : nothing}`;
}

function heading(waiting) {
  if (!waiting) return "This phone";
  const all = waiting.waiting || waiting.begun;
  return all ? `This phone: ${things(all, "thing")} waiting to be sent` : "This phone: nothing waits to be sent";
}

function waits(app, waiting) {
  if (!waiting) return nothing;
  return html`
    ${waiting.refused ? html`<p><span class="mark mark-urgent">${waiting.refused} not taken</span> <a class="act" href="#/told">See why</a></p>` : nothing}
    ${waiting.cows + waiting.photos ? html`<p>${amongWords(waiting)} among them.</p>` : nothing}
    ${(app.status.others_wait ?? []).map((other) => html`<p><span class="mark mark-due">${things(other.waiting, "thing")} of ${other.name}</span>
      at ${other.farm}: sent when ${other.name} signs in on this phone.</p>`)}
    ${app.sender ? html`<div class="actions"><button type="button" class=${waiting.waiting ? "act-main" : ""} @click=${() => sendNow(app)}>Send now</button></div>` : nothing}`;
}

function amongWords({ cows, photos }) {
  return [cows && things(cows, "cow"), photos && things(photos, "photo")].filter(Boolean).join(" and ");
}

async function sendNow(app) {
  app.say("Trying to send.", "due");
  await app.sender.sendNow();
  const { waiting } = await countWaiting();
  app.say(waiting ? "Not all of it went: the line on top says why." : "All of it is sent.", waiting ? "due" : "done");
}

function switches(app) {
  const phone = app.kept?.phone ?? {};
  return html`<div class="switches">
    ${turn("sound", "A short sound", phone.is_quiet === false, canSound(), (on) => choose(app, { is_quiet: !on }))}
    ${turn("shake", "A short shake", phone.is_still === false, canShake(), (on) => choose(app, { is_still: !on }))}
    ${turn("awake", awakeWords(phone), phone.keeps_awake === true, canStayAwake(), (on) => keepAwake(app, on))}
    ${turn("outdoor", "Outdoor: black on white for bright sun", isOutdoor(), true, (on) => outdoor(app, on))}
  </div>`;
}

function awakeWords(phone) {
  const held = phone.keeps_awake && canStayAwake() && !isAwake();
  return `Keep the screen awake${held ? " (the phone does not allow it just now)" : ""}`;
}

function turn(name, words, isOn, isPossible, change) {
  if (!isPossible) return html`<p class="quiet">${words}: this phone cannot.</p>`;
  return html`<label class="tick-row">
    <input type="checkbox" id="phone-${name}" .checked=${isOn} @change=${(event) => change(event.target.checked)}>
    <span>${words}</span>
  </label>`;
}

async function choose(app, changes) {
  await putPhone(changes);
  await app.reload();
  tick(app.kept.phone);
  app.redraw();
}

async function keepAwake(app, on) {
  await putPhone({ keeps_awake: on });
  await app.reload();
  await stayAwake(on, app.redraw);
  app.redraw();
}

function outdoor(app, on) {
  wearOutdoor(on);
  app.redraw();
}

function stayWords({ isPersisted, usedMb }) {
  const size = usedMb === null ? "" : ` It takes ${usedMb} MB.`;
  if (isPersisted === null) return `This browser does not say whether it keeps things for good: send whenever there is signal.${size}`;
  if (isPersisted) return `The browser has promised to keep what lies here until you clear it.${size}`;
  return `The browser has not promised to keep what lies here: if the phone runs full it may be thrown away. Send whenever there is signal.${size}`;
}

async function askToStay(app) {
  const isGranted = await navigator.storage.persist();
  lookAtPhone(app, true);
  app.say(
    isGranted
      ? "Promised: it stays until you clear it."
      : "Not promised. Putting the page on the home screen often helps.",
    isGranted ? "done" : "due",
  );
  document.querySelector("h1")?.focus();
}
