/* Cows that two phones put down: what shows, what the other one said, and the choice, which may wait or never be made. */

import { html } from "../../../trimops/lib/lit-html.js";
import { numberOf, whenPut } from "../day_list.js";
import { keepSafely } from "../keep_safely.js";
import { cowLine, whoPut } from "../said_words.js";
import { addWriting, putPhone } from "../store.js";
import { keepingOther } from "../two_phones.js";
import { clock } from "../when.js";
import { focusOn } from "./focus.js";

/** @param {object} app @param {{shown: object, others: object[]}[]} twice */
export function twoPhonesPart(app, twice) {
  return html`<h2>Noted on two phones</h2>
    <p>The later one shows. Both are kept; nothing needs doing unless the other one is right.</p>
    <ul class="t-list">${twice.map((pair) => row(app, pair))}</ul>`;
}

function row(app, { shown, others }) {
  const number = numberOf(shown.cowKey, app.papers, app.kept);
  return html`<li class="t-row">
    <h3>Cow ${number}</h3>
    <dl class="facts"><div><dt>Shows</dt><dd>${saidWords(app, shown)}</dd></div>
      ${others.map((other) => html`<div><dt>The other</dt><dd>${saidWords(app, other)}</dd></div>`)}</dl>
    <div class="actions">
      ${others.map((other) => html`<button type="button" @click=${() => keepOther(app, shown, other, number)}
        aria-label=${`Keep the other instead, cow ${number}: ${whoPut(other, app.papers)}`}>Keep the other instead</button>`)}
      <button type="button" aria-label=${`Leave as she shows, cow ${number}`} @click=${() => leave(app, others, number)}>Leave as she shows</button>
    </div>
  </li>`;
}

function saidWords(app, one) {
  const at = clock(whenPut(one), app.papers.visit.zone);
  const said = one.is_gone ? "taken back" : cowLine(one.content.entry, app.papers);
  const note = one.is_gone || !one.content.entry.note ? "" : ` “${one.content.entry.note}”`;
  return html`<b>${whoPut(one, app.papers)}, ${at}</b>: ${said}.${note}`;
}

async function keepOther(app, shown, other, number) {
  const write = () => addWriting({ visit: app.visit, ...keepingOther({ shown, other }) });
  await keepSafely(app, write, `Cow ${number}: what ${whoPut(other, app.papers)} noted shows now.`);
  focusOn("main");
}

/* Looked at and left: this phone does not tell of it again. The office still has both. */
async function leave(app, others, number) {
  const settled = [...(app.kept.phone.settled ?? []), ...others.map((other) => other.uid)];
  await keepSafely(app, () => putPhone({ settled }), `Cow ${number} stays as she shows.`);
  focusOn("main");
}
