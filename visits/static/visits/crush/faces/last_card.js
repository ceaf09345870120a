/* The last thing put down on this phone, and the one button that takes it back, or puts it back again. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { turnWords } from "../blade_words.js";
import { isChanged, numberOf } from "../day_list.js";
import { keepSafely } from "../keep_safely.js";
import { headWords } from "../said_words.js";
import { addWriting } from "../store.js";
import { lastThing, undoing, undoWords } from "../undo.js";
import { clock } from "../when.js";
import { withCapital } from "../words.js";

/** @param {object} app @returns {object} a template, or nothing before the first thing of the day */
export function lastCard(app) {
  const last = lastThing(app.kept.writings, app.shown);
  if (!last) return nothing;
  const what = nameOf(last, app);
  const button = undoWords(last, app.kept.writings, what);
  return html`
    <div class="q-last">
      <p>${lastWords(last, what, app)}</p>
      ${isOpen(last, app)
        ? html`<p class="quiet">She is open with a change begun: go on with her, or leave her.</p>`
        : html`<button type="button" class="act" @click=${(event) => takeBack(app, event)}>${button}</button>`}
    </div>`;
}

function nameOf(one, app) {
  if (one.kind === "cow") return `cow ${numberOf(one.cowKey, app.papers, app.kept)}`;
  if (one.kind === "blade") return `the knife change of ${clock(one.content.at ?? one.made_at, app.papers.visit.zone)}`;
  return `the wash-down of ${clock(one.content.washed_at ?? one.made_at, app.papers.visit.zone)}`;
}

function lastWords(last, what, app) {
  const at = clock(last.made_at, app.papers.visit.zone);
  if (last.is_gone) return `Last: ${what} taken back, ${at}`;
  if (last.kind === "blade") return `Last: ${what}. ${turnWords(last.content, app.papers.blades ?? [])}`;
  return last.kind === "cow" ? `Last: ${what}, ${at}. ${headWords(last.content.entry)}` : `Last: ${what}`;
}

/* Taking back closes her draft, so what is half done there goes first. */
function isOpen(last, app) {
  const draft = last.kind === "cow" && app.kept.drafts.get(last.cowKey);
  return Boolean(draft) && isChanged(draft, app.shown.get(last.cowKey), app.kept.drafts);
}

/* Once is back, twice is forth: a glove that bounces on the button must not count as two. */
async function takeBack(app, event) {
  if (event.detail > 1) return;
  const last = lastThing(app.kept.writings, app.shown);
  if (!last) return;
  const then = undoing(last, app.kept.writings);
  const what = nameOf(last, app);
  await keepSafely(app, () => addWriting({ visit: app.visit, ...then }), doneWords(then, last, what));
}

function doneWords(then, last, what) {
  const capital = withCapital(what);
  if (then.is_gone) return `${capital} is taken back.`;
  return last.is_gone ? `${capital} is back as it was.` : `${capital} is as before the change.`;
}
