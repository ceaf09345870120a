/* Wash-down between farms: with which active substance, how strong, how long, when. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { inTurn, keepThing, refusedOf, shownOfKind } from "../bench_keep.js";
import { quantity } from "../kit_count.js";
import { washMaterial } from "../rules.js";
import { dropRefused, putPhone } from "../store.js";
import { FIRST } from "../substances.js";
import { emptyWash, faultsOf, isSameWash, lastWash, washContent, washForm, washOf } from "../wash_form.js";
import { moment } from "../when.js";

let form = null;
let formOf = null; // the visit that the form was begun for

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  if (!form || formOf !== app.visit) startForm(app, emptyWash(lastWash(app)));
  const washes = shownOfKind(app, "wash");
  return html`
    <h1 tabindex="-1">${heading(washes, app.papers.visit.zone)}</h1>
    <div class="evidence"><p>${FIRST}</p></div>
    ${sameAgain(app)}
    ${refusedOf(app, "wash").map((refused) => refusedLine(app, refused))}
    ${washForm({ form, app, keep: () => inTurn(app, () => keep(app)), leave: () => leave(app) })}
    ${log(app, washes)}`;
}

function startForm(app, values) {
  form = { ...values, faults: {} };
  formOf = app.visit;
}

function heading(washes, zone) {
  if (!washes.length) return "No wash-down yet on this visit";
  const last = washes.map((wash) => wash.content.washed_at).sort().at(-1);
  return `Washed down ${moment(last, zone)}`;
}

/* What was used last is one tap: the same bucket, now. */
function sameAgain(app) {
  const last = lastWash(app);
  if (!last || form.on) return nothing;
  const again = () => inTurn(app, () => keepContent(app, washContent(emptyWash(last)), null));
  return html`<div class="actions"><button type="button" class="act-main" @click=${again}>
    Washed now, the same as last time</button></div>
    <p class="quiet">Last time: ${washWords(last, app.papers)}</p>`;
}

async function keep(app) {
  form.faults = faultsOf(form);
  const first = Object.keys(form.faults)[0];
  if (first) {
    app.say("Not kept yet: see what is to be mended.", "due");
    document.getElementById(`wash-${first}`)?.focus();
    return;
  }
  await keepContent(app, washContent(form), form.on);
}

async function keepContent(app, content, on) {
  if (!on && shownOfKind(app, "wash").some((wash) => isSameWash(wash.content, content))) {
    return app.say("That wash-down is kept already.", "done");
  }
  await putPhone({ last_wash: content });
  await keepThing(app, { kind: "wash", content, on });
  await agreeSignOff(app);
  startForm(app, emptyWash(content));
  app.say("Wash-down kept on this phone.", "done");
  return document.getElementById("wash-log")?.focus();
}

/* The kit is often washed after the farmer was told: what was signed says so too. */
async function agreeSignOff(app) {
  const signed = shownOfKind(app, "sign_off").at(-1);
  const isWashed = shownOfKind(app, "wash").length > 0;
  if (!signed || signed.content.washed_down === isWashed) return;
  await keepThing(app, { kind: "sign_off", content: { ...signed.content, washed_down: isWashed }, on: signed });
}

function leave(app) {
  startForm(app, emptyWash(lastWash(app)));
  app.redraw();
  document.getElementById("wash-log")?.focus();
}

function log(app, washes) {
  return html`<h2 id="wash-log" tabindex="-1">Kept on this visit</h2>
    ${washes.length
      ? html`<ul class="bench-list">${washes.map((wash) => logLine(app, wash))}</ul>`
      : html`<p>Nothing yet. The next farm may ask.</p>`}`;
}

function logLine(app, wash) {
  const zone = app.papers.visit.zone;
  const said = `wash-down of ${moment(wash.content.washed_at, zone)}`;
  return html`<li>
    <p><b>${moment(wash.content.washed_at, zone)}</b> ${washWords(wash.content, app.papers)}
      ${wash.state === "waiting" ? html`<span class="quiet">waiting to send</span>` : nothing}
      ${wash.by ? html`<span class="quiet">by ${wash.by}</span>` : nothing}</p>
    <div class="actions">
      <button type="button" aria-label="Change the ${said}" @click=${() => change(app, wash)}>Change</button>
      <button type="button" aria-label="Take back the ${said}" @click=${() => inTurn(app, () => takeBack(app, wash))}>Take back</button>
    </div></li>`;
}

function refusedLine(app, wash) {
  return html`<div class="mend"><h2>Not taken: ${washWords(wash.content, app.papers)}</h2>
    <ul>${wash.faults.map((fault) => html`<li>${fault.reason}</li>`)}</ul>
    <div class="actions"><button type="button" @click=${() => change(app, wash)}>Mend it</button>
      <button type="button" @click=${() => inTurn(app, () => letGo(app, wash))}>Let go of it</button></div></div>`;
}

async function letGo(app, wash) {
  await dropRefused(wash.uid);
  await app.reload();
  app.say("Let go of. Nothing of it was sent.", "done");
  document.getElementById("wash-log")?.focus();
}

function change(app, wash) {
  startForm(app, washOf(wash));
  app.redraw();
  document.getElementById("wash-substance")?.focus();
}

async function takeBack(app, wash) {
  await keepThing(app, { kind: "wash", content: wash.content, on: wash, isGone: true });
  await agreeSignOff(app);
  if (form.on?.uid === wash.uid) startForm(app, emptyWash(lastWash(app)));
  app.say("Wash-down taken back.", "done");
  document.getElementById("wash-log")?.focus();
}

function washWords(content, papers) {
  const { substance, dilution, contact_minutes: minutes, litres } = content;
  const mixed = washMaterial(content, papers);
  const taken = mixed ? `; ${quantity(mixed.used)} ${mixed.item.unit} of ${mixed.item.name} in ${litres} l` : "";
  return `${substance} ${dilution}, ${minutes} min on${taken}`;
}
