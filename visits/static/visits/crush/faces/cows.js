/* Every cow noted today: what was done, whether it has reached the office, and how to change or take back each. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { cowsDone, numberOf, whenPut } from "../day_list.js";
import { keepSafely } from "../keep_safely.js";
import { openAgain } from "../mend.js";
import { cowLine, whoPut } from "../said_words.js";
import { addWriting } from "../store.js";
import { takenBack, takingBack, undoing } from "../undo.js";
import { clock } from "../when.js";
import { focusOn } from "./focus.js";
import { mark } from "./marks.js";

const MANY = 8;
const look = { number: "", asked: null };

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const all = cowsDone(app.shown).map((one) => ({ one, number: numberOf(one.cowKey, app.papers, app.kept) }));
  const rows = all.length > MANY ? all.filter(({ number }) => isLike(number)) : all;
  return html`
    <h1 tabindex="-1">${title(all.length)}</h1>
    ${all.length > MANY ? filter(app, rows.length) : nothing}
    <ul class="d-list">${rows.map((row) => cowRow(app, row))}</ul>
    ${goneList(app)}
    <p class="actions"><a class="act act-main" href="#/">To the next cow</a></p>`;
}

function title(count) {
  if (count === 0) return "No cow is noted yet today";
  return count === 1 ? "1 cow noted today" : `${count} cows noted today`;
}

const isLike = (number) => number.toLowerCase().includes(look.number.trim().toLowerCase());

function filter(app, count) {
  const type = (event) => {
    look.number = event.target.value;
    app.redraw();
  };
  return html`<div class="field"><label for="d-number">Find her by number</label>
      <input id="d-number" inputmode="numeric" autocomplete="off" .value=${look.number} @input=${type}></div>
    <p role="status" class=${look.number ? "" : "unseen"}>${count === 1 ? "1 cow" : `${count} cows`} like ${look.number || "any"}.</p>`;
}

function cowRow(app, { one, number }) {
  return html`<li class="d-row">
    <button type="button" class="d-cow" @click=${() => openAgain(app, one.cowKey)}>
      <span class="d-head"><b>${number}</b> ${stateMark(app, one)}</span>
      <span>${clock(whenPut(one), app.papers.visit.zone)} · ${cowLine(one.content.entry, app.papers)}</span>
    </button>
    ${one.beside.length ? html`<a class="act" href="#/told">Two phones: look</a>` : nothing}
    ${one.state === "refused" ? html`<a class="act" href="#/told">Why, and what to do</a>` : takeBackPart(app, one, number)}
  </li>`;
}

function takeBackPart(app, one, number) {
  if (look.asked === one.cowKey) return question(app, one, number);
  return html`<button type="button" id=${`d-${one.cowKey}`} class="d-back" aria-label=${`Take back cow ${number}`}
    @click=${() => ask(app, one)}>Take back</button>`;
}

function stateMark(app, one) {
  if (one.state === "refused") return mark({ kind: "urgent", word: "Not taken by the office" });
  if (one.state === "waiting") return mark({ kind: "due", word: "Waiting to be sent" });
  return mark({ kind: "done", word: one.state === "other" ? `Sent: ${whoPut(one, app.papers)}` : "Sent" });
}

/* The answer that changes nothing stands where the finger is. */
function question(app, one, number) {
  return html`<div class="d-ask" role="group" aria-label=${`Take back cow ${number}?`}>
    <p>Take back cow ${number}? She can be put back.</p>
    <button type="button" class="act-stop" @click=${() => takeBack(app, one, number)}>Yes, take her back</button>
    <button type="button" id="d-keep" @click=${() => keep(app, one)}>Keep her</button>
  </div>`;
}

function ask(app, one) {
  look.asked = one.cowKey;
  app.redraw();
  focusOn("d-keep");
}

function keep(app, one) {
  look.asked = null;
  app.redraw();
  focusOn(`d-${one.cowKey}`);
}

async function takeBack(app, one, number) {
  look.asked = null;
  await write(app, takingBack(one), `Cow ${number} is taken back.`);
}

function write(app, then, words) {
  return keepSafely(app, () => addWriting({ visit: app.visit, ...then }), words);
}

/* Whoever was taken back can come back, at any time of the day. */
function goneList(app) {
  const gone = takenBack(app.kept.writings, app.shown);
  if (gone.length === 0) return nothing;
  return html`<h2>Taken back</h2><ul class="lines">${gone.map((one) => goneRow(app, one))}</ul>`;
}

function goneRow(app, one) {
  const number = numberOf(one.cowKey, app.papers, app.kept);
  const back = () => write(app, undoing(one, app.kept.writings), `Cow ${number} is back as she was.`);
  return html`<li><span><b>${number}</b> taken back at ${clock(whenPut(one), app.papers.visit.zone)}</span>
    <button type="button" @click=${back}>Put cow ${number} back</button></li>`;
}
