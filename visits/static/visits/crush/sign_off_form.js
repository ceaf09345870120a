/* The account of the visit: words proposed from the cows, all of them the trimmer's to change. */

import { html, nothing } from "../../trimops/lib/lit-html.js";
import { shownOfKind } from "./bench_keep.js";
import { doneWords, toDoWords } from "./sign_off_words.js";
import { putPhone } from "./store.js";

const TYPED = ["received_by", "was_done", "farm_to_do", "hygiene_note"];

/**
 * The form as it was left, else as it was signed, else with the proposed words (null: they follow the cows).
 * @param {object} app
 * @param {object|null} signed the sign-off that shows
 */
export function startSignOff(app, signed) {
  const empty = { received_by: "", was_done: null, farm_to_do: null, hygiene_note: "" };
  const unsaid = app.kept.phone.sign_off_begun?.[keyOf(app)];
  return { ...empty, ...signed?.content, ...unsaid, visit: app.visit, fault: "" };
}

/** What is sent. */
export function signOffContent(app, form, sum) {
  return {
    received_by: form.received_by.trim(),
    was_done: (form.was_done ?? doneWords(sum)).trim(),
    farm_to_do: (form.farm_to_do ?? toDoWords(sum, app.papers)).trim(),
    washed_down: shownOfKind(app, "wash").length > 0,
    hygiene_note: form.hygiene_note.trim(),
  };
}

/** What was typed and not yet signed is kept too: a phone that goes off loses no sentence. */
async function keepUnsaid(app, form) {
  const typed = Object.fromEntries(TYPED.map((name) => [name, form[name]]));
  await putAll(app, { ...app.kept.phone.sign_off_begun, [keyOf(app)]: typed });
}

/** Signed, or cleared from the phone: nothing of that visit is left half said. */
export async function forgetUnsaid(app, visit = app.visit) {
  const all = Object.entries(app.kept.phone.sign_off_begun ?? {});
  await putAll(app, Object.fromEntries(all.filter(([key]) => !key.endsWith(`/${visit}`))));
}

async function putAll(app, all) {
  app.kept.phone.sign_off_begun = all;
  await putPhone({ sign_off_begun: all });
}

/* Another person who takes over the phone begins with an empty form. */
function keyOf({ papers: { seat }, visit }) {
  return `${seat.business}:${seat.user}/${visit}`;
}

/** The fields. `keep` is called by the button. */
export function signOffForm({ form, app, sum, isDone, keep }) {
  const set = (name, value) => {
    form[name] = value;
    if (value && name === "received_by") form.fault = "";
    app.redraw();
    keepUnsaid(app, form);
  };
  const put = (event) => {
    event.preventDefault();
    keep();
  };
  const names = app.papers.farm.contacts.map((person) => person.name);
  return html`<form class="bench-form" @submit=${put} novalidate>
    <h2>The account for the farm</h2>
    ${proposed(form, set, "was_done", "What was done", doneWords(sum), 3)}
    ${proposed(form, set, "farm_to_do", "For the farm to do", toDoWords(sum, app.papers), 10)}
    ${line(form, set, "hygiene_note", "Anything about washing and hygiene", 200)}
    ${line(form, set, "received_by", "Who received it", 120)}
    ${names.length ? html`<div class="choices">${names.map((name) => html`<button type="button" class="key"
      aria-pressed=${form.received_by === name ? "true" : "false"} @click=${() => set("received_by", name)}>${name}</button>`)}</div>` : nothing}
    ${sum.notSeen.length ? html`<p><span class="mark mark-due">${sum.notSeen.length} on the list not seen</span> Tell the farm and the office.</p>` : nothing}
    <div class="actions"><button class="act-main">${isDone ? "Keep the change" : "Finish the visit"}</button></div>
  </form>`;
}

function proposed(form, set, name, label, words, rows) {
  const id = `sign-${name}`;
  const isOwn = form[name] !== null && form[name] !== words;
  const anew = () => {
    set(name, null);
    document.getElementById(id)?.focus(); // the button is gone
  };
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <p class="help" id="${id}-help">${isOwn ? "In your words." : "Written from the cows noted. Change what you like."}</p>
    <textarea id=${id} rows=${rows} maxlength="4000" aria-describedby="${id}-help" .value=${form[name] ?? words}
      @input=${(event) => set(name, event.target.value)}></textarea>
    ${isOwn ? html`<button type="button" @click=${anew}>Write it anew from the cows<span class="unseen">: ${label}</span></button>` : nothing}
  </div>`;
}

function line(form, set, name, label, longest) {
  const id = `sign-${name}`;
  const fault = name === "received_by" ? form.fault : "";
  return html`<div class="field ${fault ? "field-wrong" : ""}">
    <label for=${id}>${label}${name === "hygiene_note" ? html` <span class="may">may stay empty</span>` : nothing}</label>
    ${fault ? html`<ul class="errorlist" id="${id}-fault"><li>${fault}</li></ul>` : nothing}
    <input id=${id} maxlength=${longest} autocomplete="off" .value=${form[name]} aria-invalid=${fault ? "true" : nothing}
      aria-describedby=${fault ? `${id}-fault` : nothing} @input=${(event) => set(name, event.target.value)}>
  </div>`;
}
