/* Which cow is in the crush: her number on large keys, and who it may be, narrowing with each key. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { offers } from "../keypad_list.js";
import { openAgain } from "../mend.js";
import { checkDigit } from "../rules.js";
import { clock } from "../when.js";
import { whenPut } from "../day_list.js";
import { keys } from "./keypad_keys.js";
import { mark } from "./marks.js";

const LONGEST = 20; // as Cow.number
const pad = { typed: "", isLetters: false, isOpen: false, app: null };

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  open();
  pad.app = app;
  const offer = offers(app, pad.typed);
  const hint = checkDigit(pad.typed);
  return html`
    <div class="k">
      <h1 tabindex="-1" class="k-title">Which cow is in the crush?</h1>
      <div class="k-typed">
        <label class="unseen" for="k-number">Her number</label>
        <input id="k-number" inputmode="none" autocomplete="off" autocapitalize="characters" spellcheck="false"
          maxlength=${LONGEST} placeholder="Number" .value=${pad.typed} aria-describedby="k-count"
          @input=${(event) => type(app, event.target.value, event.target)} @keydown=${(event) => enter(event)}>
        ${pad.typed ? html`<button type="button" @mousedown=${stayPut} @click=${() => type(app, "")}>Clear</button>` : nothing}
        <a class="act" href="#/">Back</a>
      </div>
      <p id="k-count" class="unseen" role="status">${countWords(offer)}</p>
      ${hint ? html`<p class="k-hint">${mark({ kind: "due", word: "Read it again" })} <span>${pad.typed}: ${hint}. Right all the same? Go on.</span></p>` : nothing}
      <ul class="k-list">${offer.hits.map((hit) => hitRow(app, hit))}${addRow(app, offer)}</ul>
      ${keys(pad, { press: (sign) => press(app, sign), rub: () => type(app, pad.typed.slice(0, -1)), turn: () => turn(app), stayPut })}
    </div>`;
}

function countWords({ hits, isMore, isExact }) {
  if (!pad.typed) return hits.length ? "Next on the list are shown." : "";
  if (hits.length === 0) return `No cow like ${pad.typed} on this farm.`;
  const cows = hits.length === 1 ? "1 cow" : `${hits.length} cows`;
  return `${cows}${isMore ? " and more" : ""} like ${pad.typed}${isExact ? `, the first is ${hits[0].number}` : ""}.`;
}

function hitRow(app, hit) {
  return html`<li>
    <button type="button" class=${`k-hit ${hit.isExact ? "is-exact" : ""}`} @mousedown=${stayPut} @click=${() => openAgain(app, hit.cowKey)}>
      <b>${hit.number}</b> <span class="k-what">${hitWords(app, hit)}</span>
    </button></li>`;
}

function hitWords(app, { done, mark: meaning, apart, cow }) {
  const at = done && clock(whenPut(done), app.papers.visit.zone);
  const state = done ? mark({ kind: "done", word: `Done ${at}` }) : meaning ? mark(meaning) : nothing;
  const words = apart || (done ? "opens to change" : (cow?.why[0] ?? ""));
  return html`${state} ${words ? html`<span>${words}</span>` : nothing}`;
}

/* Nobody has the number, or she that has it is another cow. */
function addRow(app, { isExact }) {
  const number = pad.typed.trim();
  if (!number) return nothing;
  const words = isExact ? `Another cow that wears ${number}: add her` : `Add cow ${number}`;
  return html`<li><button type="button" class="k-add" @mousedown=${stayPut} @click=${() => add(app, isExact)}>${words}</button></li>`;
}

function type(app, text, field = null) {
  pad.typed = text.toUpperCase().replace(/\s+/g, " ").trimStart().slice(0, LONGEST);
  if (field) field.value = pad.typed;
  app.redraw();
}

function press(app, sign) {
  pad.isLetters = false;
  app.tick();
  type(app, pad.typed + sign);
}

function turn(app) {
  pad.isLetters = !pad.isLetters;
  app.redraw();
}

/* Enter takes the exact hit, the only one that is like it, or the new cow where there is none; else a thumb must say which. */
function enter(event) {
  if (event.key !== "Enter" || !pad.typed.trim()) return;
  event.preventDefault();
  const { hits } = offers(pad.app, pad.typed);
  const exact = hits.filter((hit) => hit.isExact);
  if (hits.length > 1 && exact.length !== 1) return pad.app.say(`Which one? ${hits.length} cows are like ${pad.typed}.`, "due");
  document.querySelector(".k-list button")?.click();
}

function add(app, isAnother) {
  const uid = crypto.randomUUID();
  return app.openCow(`n${uid}`, { new: { uid, number: pad.typed.trim(), is_another: isAnother } });
}

/* A tap on a key leaves the focus in the number, so that a keyboard on the desk goes on from there. */
function stayPut(event) {
  event.preventDefault();
}

/* Fresh each time one comes here; the number has the focus. */
function open() {
  if (pad.isOpen) return;
  Object.assign(pad, { typed: "", isLetters: false, isOpen: true });
  setTimeout(() => document.getElementById("k-number")?.focus({ preventScroll: true }));
}

window.addEventListener("hashchange", () => {
  if (!location.hash.startsWith("#/number")) pad.isOpen = false;
});

/* A hardware keyboard counts wherever the focus stands; Enter on a button stays that button's own. */
document.addEventListener("keydown", (event) => {
  const field = document.getElementById("k-number");
  if (!field || event.target === field || event.ctrlKey || event.altKey || event.metaKey) return;
  if (/^[\da-z]$/i.test(event.key) || event.key === "Backspace") field.focus({ preventScroll: true }); // it arrives there
  if (!event.target.closest("a, button")) enter(event);
});
