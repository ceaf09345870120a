/* Knives: which is in hand, how far its edge is, which one drags, cracked or chipped. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { inTurn, keepThing, refusedOf } from "../bench_keep.js";
import { asksPanel, once, startAsking } from "../blade_asks.js";
import { bladesOf, layDown, take, turnsOf } from "../blade_turns.js";
import { edgeWords, handWords, isPast, turnWords } from "../blade_words.js";
import { things } from "../sign_off_words.js";
import { dropRefused } from "../store.js";
import { clock } from "../when.js";
import { mark } from "./marks.js";

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const rows = bladesOf(app);
  if (!rows.length) return none();
  return html`
    <h1 tabindex="-1">${handWords(rows)}</h1>
    ${rows.filter((row) => row.isInHand && isPast(row)).map(pastWords)}
    ${asksPanel(app, rows) ?? acts(app, rows)}
    <ul class="blades">${rows.map((row) => bladeRow(app, row))}</ul>
    ${refusedOf(app, "blade").map((one) => refusedLine(app, one))}
    ${log(app, turnsOf(app))}
    ${wayBack(app)}`;
}

function none() {
  return html`<h1 tabindex="-1">No knives are kept for this van</h1>
    <div class="empty"><p>The office adds knives and discs; then their cows count themselves here.</p></div>`;
}

function pastWords(row) {
  return html`<p>${mark({ kind: "due", word: `${row.blade.name}: ${things(row.cows, "cow")}` })}, and such an edge is counted on
    for ${row.blade.counted_on}. Look at it when it suits.</p>`;
}

function acts(app, rows) {
  const start = (kind) => (event) => once(app, event, () => startAsking(app, kind));
  return html`<div class="row-of-two">
    ${rows.some((row) => row.isInHand) ? html`<button class="key" @click=${start("drags")}><strong>It drags</strong></button>` : nothing}
    <button class="key" @click=${start("broken")}><strong>Cracked or chipped</strong></button></div>`;
}

function bladeRow(app, row) {
  const { blade } = row;
  const kind = blade.hand === "either" ? blade.kind_label : `${blade.kind_label}, ${blade.hand_label.toLowerCase()}`;
  if (!row.mayCut) {
    return html`<li><p class="blade-out"><b>${blade.name}</b> ${mark({ kind: "urgent", word: edgeWords(row) })}</p></li>`;
  }
  return html`<li><button class="key wide blade" data-blade=${blade.id} aria-pressed=${String(row.isInHand)}
    @click=${(event) => once(app, event, () => press(app, row))}>
    <span class="blade-name"><strong>${blade.name}</strong> <small>${kind}</small></span>
    <span>${row.isInHand ? "In hand: " : ""}${edgeWords(row)}${isPast(row) ? `, counted on for ${blade.counted_on}` : ""}</span>
    </button></li>`;
}

/* As it stands now: another tap may have been kept since the button was drawn. */
async function press(app, { blade }) {
  const { isInHand } = bladesOf(app).find((row) => row.blade.id === blade.id);
  await (isInHand ? layDown(app, blade) : take(app, blade));
  app.say(isInHand ? `${blade.name} is laid down.` : `${blade.name} is in hand.`, "done");
}

function log(app, turns) {
  return html`<h2 id="blade-log" tabindex="-1">Said on this visit</h2>
    ${turns.length
      ? html`<ul class="bench-list">${turns.toReversed().map((turn) => logLine(app, turn))}</ul>`
      : html`<p>Nothing yet: what was in hand last is taken to be in hand still.</p>`}`;
}

function logLine(app, turn) {
  const at = clock(new Date(turn.at).toISOString(), app.papers.visit.zone);
  const back = () => inTurn(app, () => takeBack(app, turn.writing));
  return html`<li><p><b>${at}</b> ${turnWords(turn, app.papers.blades)}
      ${turn.writing.state === "waiting" ? html`<span class="quiet">waiting to send</span>` : nothing}
      ${turn.writing.by ? html`<span class="quiet">by ${turn.writing.by}</span>` : nothing}</p>
    <div class="actions"><button type="button" aria-label="Take back what was said at ${at}" @click=${back}>Take back</button></div></li>`;
}

async function takeBack(app, writing) {
  await keepThing(app, { kind: "blade", content: writing.content, on: writing, isGone: true });
  app.say("Taken back.", "done");
  document.getElementById("blade-log")?.focus();
}

function refusedLine(app, one) {
  const letGo = async () => {
    await dropRefused(one.uid);
    await app.reload();
    app.say("Let go of. Nothing of it was sent.", "done");
  };
  return html`<div class="mend"><h2>Not taken: ${turnWords(one.content, app.papers.blades)}</h2>
    <ul>${one.faults.map((fault) => html`<li>${fault.reason}</li>`)}</ul>
    <p>Say it again above if it still holds.</p>
    <div class="actions"><button type="button" @click=${() => inTurn(app, letGo)}>Let go of it</button></div></div>`;
}

/* From a cow to her knife and back again. */
function wayBack(app) {
  const { cowKey } = app.place;
  const isOpen = cowKey && app.kept.drafts.has(cowKey);
  const words = isOpen ? `Back to cow ${app.cowOf(cowKey).number}` : "To the next cow";
  return html`<div class="bar"><a class="bar-main" href=${isOpen ? `#/cow/${cowKey}` : "#/"}><strong>${words}</strong></a></div>`;
}
