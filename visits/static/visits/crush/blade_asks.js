/* What is asked when a knife drags or is broken: which one, what it is, which one next. The word itself is kept at once; the
   answer to "which one next" only adds to it. */

import { html, nothing } from "../../trimops/lib/lit-html.js";
import { inTurn } from "./bench_keep.js";
import { bladesOf, broke, dragged, isLike, isReady, nextBlade, take } from "./blade_turns.js";
import { things } from "./sign_off_words.js";

let asking = null; // {visit, step: "drags"|"broken"|"fault"|"next"|"stop", blade: key, record: of the turn}

/** A glove that bounces must not answer the question that its own tap has raised. */
export function once(app, event, work) {
  return event.detail > 1 ? undefined : inTurn(app, work);
}

/**
 * "It drags" or "Cracked or chipped": with one knife in hand it is that one which drags; a broken one may lie anywhere.
 * @param {object} app @param {"drags"|"broken"} step
 */
export function startAsking(app, step) {
  const held = bladesOf(app).filter((row) => row.isInHand);
  if (step === "drags" && held.length === 1) return drags(app, held[0].blade);
  return ask(app, { step });
}

/** The question that is open, or null. @param {object} app @param {ReturnType<typeof bladesOf>} rows */
export function asksPanel(app, rows) {
  if (asking?.visit !== app.visit) asking = null;
  if (!asking) return null;
  const row = rows.find(({ blade }) => blade.id === asking.blade);
  if (asking.record && !(row && turnOf(app))) return null;
  if (asking.step === "next") return nextPanel(app, rows, row);
  if (asking.step === "stop") return stopPanel(app, row);
  if (asking.step === "fault") return row?.mayCut ? faultPanel(app, row) : null;
  return whichPanel(app, rows);
}

function ask(app, question) {
  asking = { visit: app.visit, ...question };
  app.redraw();
  document.querySelector(".blade-asks")?.focus();
}

function close(app) {
  asking = null;
  app.redraw();
  document.querySelector("h1")?.focus();
}

/* The turn that the question goes on from, as it shows now; another tap may have taken it back. */
function turnOf(app) {
  return app.shown.get(asking.record) ?? null;
}

function panel(title, ...parts) {
  return html`<section class="blade-asks" tabindex="-1" aria-label=${title}><h2>${title}</h2>${parts}</section>`;
}

function button(app, words, work, small = "") {
  return html`<button class="key" @click=${(event) => once(app, event, work)}><strong>${words}</strong>
    ${small ? html`<small>${small}</small>` : nothing}</button>`;
}

function whichPanel(app, rows) {
  const isDragging = asking.step === "drags";
  const asked = rows.filter((row) => (isDragging ? row.isInHand : row.mayCut));
  const choose = ({ blade }) => () => (isDragging ? drags(app, blade) : ask(app, { step: "fault", blade: blade.id }));
  return panel(
    isDragging ? "Which one drags?" : "Which one is cracked or chipped?",
    html`<div class="choices">${asked.map((row) => button(app, row.blade.name, choose(row), row.isInHand ? "in hand" : ""))}
      ${button(app, "None: leave it", () => close(app))}</div>`,
  );
}

function faultPanel(app, row) {
  const say = (fault) => () => breaks(app, row.blade, fault);
  return panel(
    `${row.blade.name}: cracked or chipped?`,
    caution(app, row.blade),
    html`<div class="row-of-three">${button(app, "Cracked", say("cracked"))}${button(app, "Chipped", say("chipped"))}
      ${button(app, "Neither", () => close(app))}</div>`,
  );
}

function caution(app, blade) {
  const { blade_broken: knife, disc_broken: disc } = app.papers.cautions;
  return html`<p class="said-urgent" role="alert">${blade.is_turned ? disc : knife}</p>`;
}

/* The one with the fewest cows stands first and largest; any other may be taken, or none, or the dull one go on. */
function nextPanel(app, rows, row) {
  const next = nextBlade(rows, row.blade);
  const others = rows.filter((other) => isReady(other) && isLike(other.blade, row.blade) && other !== next && other !== row);
  const use = (other) => async () => {
    await take(app, other.blade, turnOf(app));
    asking = null;
    app.say(`${other.blade.name} is in hand.`, "done");
  };
  return panel(
    row.fault ? `${row.blade.name} is out of use. Which one next?` : `${row.blade.name} is put away as dull. Which one next?`,
    row.fault ? caution(app, row.blade) : nothing,
    next
      ? html`<button class="act-main" @click=${(event) => once(app, event, use(next))}>Take ${next.blade.name}: ${things(next.cows, "cow")}</button>`
      : html`<p>No other sharp one of its kind is on the van.</p>`,
    html`<div class="choices">${others.map((other) => button(app, other.blade.name, use(other), things(other.cows, "cow")))}
      ${row.mayCut ? button(app, "Go on with it as it is", use(row)) : nothing}
      ${button(app, "None for now", () => close(app))}</div>`,
  );
}

function stopPanel(app, row) {
  return panel(`${row.blade.name} is out of use`, caution(app, row.blade), html`<div class="row-of-two">${button(app, "Done", () => close(app))}</div>`);
}

async function drags(app, blade) {
  const { record } = await dragged(app, blade);
  app.say(`${blade.name}: noted that it drags.`, "done");
  ask(app, { step: "next", blade: blade.id, record });
}

async function breaks(app, blade, fault) {
  const wasInHand = bladesOf(app).find((row) => row.blade.id === blade.id)?.isInHand;
  const { record } = await broke(app, blade, fault);
  app.say(`${blade.name} is ${fault}: out of use.`, "urgent");
  ask(app, { step: wasInHand ? "next" : "stop", blade: blade.id, record });
}
