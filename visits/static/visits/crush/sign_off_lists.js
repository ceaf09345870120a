/* What the sign-off sums up, in the order of what must not be forgotten: vet, blocks, re-checks, cows not seen, wash,
   knives. */

import { html, nothing } from "../../trimops/lib/lit-html.js";
import { shownOfKind } from "./bench_keep.js";
import { bladesOf } from "./blade_turns.js";
import { edgeWords, eveningRows } from "./blade_words.js";
import { spanWords, things } from "./sign_off_words.js";
import { dayWords, moment } from "./when.js";

/**
 * @param {object} app
 * @param {ReturnType<typeof import("./day_sum.js").sumOfDay>} sum
 */
export function sumLists(app, sum) {
  const { labels, visit } = app.papers;
  return html`${vet(sum.vet, labels)}${blocks(sum.blocks, labels, visit.day)}${rechecks(sum.rechecks, labels)}${notSeen(sum.notSeen)}${washed(app)}${toGrind(app)}`;
}

function vet(lines, labels) {
  if (!lines.length) return html`<h2>For the vet</h2><p>No cow for the vet this time.</p>`;
  const cows = new Set(lines.map((line) => line.cowKey)).size;
  return html`<section class="for-vet">
    <h2><span class="mark mark-urgent">For the vet: ${things(cows, "cow")}</span></h2>
    <ul class="bench-list">${lines.map((line) => html`<li><p><b>${line.number}</b>
      ${line.foot ? `${labels.feet[line.foot]}: ` : ""}${line.reason}</p>
      ${line.told
        ? html`<p>Told: ${line.told}</p>`
        : html`<a class="act" href="#/cow/${line.cowKey}">Who was told of ${line.number}?</a>`}</li>`)}</ul>
    <p>What it is and what is given for it, the vet decides.</p></section>`;
}

function blocks(lines, labels, today) {
  return html`<h2>${lines.length ? `Blocks to come off: ${lines.length}` : "Blocks to come off"}</h2>
    ${lines.length
      ? html`<ul class="bench-list">${lines.map((block) => html`<li><p><b>${block.number}</b>
          ${labels.feet[block.foot]}, ${labels.claws[block.claw] ?? block.claw}: ${labels.blocks[block.kind] ?? block.kind}</p>
          <p>${offWords(block, today)}</p></li>`)}</ul>`
      : html`<p>No block is on.</p>`}`;
}

function offWords(block, today) {
  const since = block.put_on < today ? html` <span class="quiet">on since ${dayWords(block.put_on)}</span>` : nothing;
  const by = `off by ${dayWords(block.off_by)}`;
  return block.off_by < today ? html`<span class="mark mark-due">Overdue: ${by}</span>${since}` : html`${by}${since}`;
}

function rechecks(lines, labels) {
  return html`<h2>${lines.length ? `To be looked at again: ${things(lines.length, "foot", "feet")}` : "To be looked at again"}</h2>
    ${lines.length
      ? html`<ul class="bench-list">${lines.map((due) => html`<li><p><b>${due.number}</b>
          ${due.foot ? `${labels.feet[due.foot]}: ` : ""}${due.what}</p><p>${spanWords(due)}</p></li>`)}</ul>`
      : html`<p>No foot.</p>`}`;
}

function notSeen(cows) {
  if (!cows.length) return nothing;
  return html`<h2>On the list, not seen: ${cows.length}</h2>
    <ul class="bench-list">${cows.map((cow) => html`<li><p><a class="cow-line" href="#/cow/c${cow.id}"><b>${cow.number}</b></a>
      ${cow.why.join("; ")}</p></li>`)}</ul>`;
}

function washed(app) {
  const times = shownOfKind(app, "wash").map((wash) => wash.content.washed_at).sort();
  return html`<h2>Wash-down</h2>
    ${times.length
      ? html`<p><span class="mark mark-done">Washed down ${moment(times.at(-1), app.papers.visit.zone)}</span></p>`
      : html`<p><span class="mark mark-due">Not noted yet</span></p>`}
    <p><a class="act" href="#/wash">${times.length ? "See the wash-down" : "Note the wash-down"}</a></p>`;
}

/* Nothing is asked: what went dull or broke today, so that it is not forgotten in the van. */
function toGrind(app) {
  const { dull, broken } = eveningRows(bladesOf(app));
  const list = (rows) => html`<ul class="bench-list">${rows.map((row) => html`<li><p><b>${row.blade.name}</b> ${edgeWords(row)}</p></li>`)}</ul>`;
  return html`${dull.length ? html`<h2>To grind tonight</h2>${list(dull)}` : nothing}
    ${broken.length ? html`<h2><span class="mark mark-urgent">Broken: not to be used</span></h2>${list(broken)}` : nothing}`;
}
