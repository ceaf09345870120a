/* The home of the day: how far it is, who is next, who remains, the last thing put down and how to take it back. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { cowsBegun, cowsOfDay, cowsDone, cowsRemaining } from "../day_list.js";
import { bladesOf } from "../blade_turns.js";
import { handWords, isPast } from "../blade_words.js";
import { lastCard } from "./last_card.js";
import { mark } from "./marks.js";
import { tallyStrip } from "./tally_strip.js";
import { twoPhones } from "../two_phones.js";
import { clock } from "../when.js";

const WAYS = [
  ["#/cows", "Cows of the day"],
  ["#/farm", "Farm"],
  ["#/kit", "Kit"],
  ["#/wash", "Wash-down"],
  ["#/sign-off", "Sign-off"],
  ["#/phone", "This phone"],
];

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const [first, ...rest] = whoRemains(app);
  return html`
    <h1 tabindex="-1">${answer(app)}</h1>
    <div class="bar q-bar">${first ? nextCard(app, first) : nothing}${anotherCow(first)}</div>
    ${signedOff(app)} ${news(app)} ${lastCard(app)} ${tallyStrip(app)} ${knifeLine(app)}
    <details class="more q-more" ?open=${!first}>
      <summary>Farm, kit, wash-down, sign-off</summary>
      <nav class="q-ways" aria-label="Pages of this visit">
        ${WAYS.map(([hash, word]) => html`<a href=${hash}>${word}</a>`)}
      </nav>
    </details>
    ${remainList(app, rest, Boolean(first))}`;
}

function signedOff({ papers }) {
  const { finished_at: at, zone } = papers.visit;
  return at ? html`<p>Signed off at ${clock(at, zone)}. A cow can still be added or changed.</p>` : nothing;
}

/* Told, and in nobody's way. */
function news(app) {
  const { writings, photos, phone } = app.kept;
  const refused = [...writings, ...photos].filter((one) => one.state === "refused").length;
  const twice = twoPhones(writings, app.shown, phone.settled).length;
  const words = [
    refused ? `${refused} to mend` : "",
    twice ? `${twice === 1 ? "1 cow" : `${twice} cows`} on two phones` : "",
  ].filter(Boolean);
  if (words.length === 0) return nothing;
  return html`<a class="q-news" href="#/told">${mark({ kind: refused ? "urgent" : "due", word: words.join("; ") })} Look</a>`;
}

/** Which knife is in hand, and the way to change it. */
function knifeLine(app) {
  const rows = bladesOf(app);
  if (!rows.length) return nothing;
  const isOver = rows.some((row) => row.isInHand && (row.isDull || isPast(row)));
  return html`<a class="q-knife" href="#/knives">${isOver ? mark({ kind: "due", word: handWords(rows) }) : handWords(rows)}</a>`;
}

/** First who was begun and not put down, then the list of the day. */
function whoRemains(app) {
  const begun = cowsBegun(app.papers, app.kept, app.shown);
  const keys = new Set(begun.map((one) => one.cowKey));
  return [...begun, ...cowsRemaining(app.papers, app.shown).filter((one) => !keys.has(one.cowKey))];
}

/** "12 of 31 cows done": the answer that the page gives. */
function answer(app) {
  const done = cowsDone(app.shown).length;
  const all = cowsOfDay(app.papers, app.shown);
  const cows = (number) => `${number} ${number === 1 ? "cow" : "cows"}`;
  if (all === 0) return `${cows(done)} done`;
  return done === all ? `All ${cows(all)} done` : `${done} of ${cows(all)} done`;
}

function nextCard(app, { cowKey, cow, mark: meaning, isBegun }) {
  const why = isBegun ? ["Not noted yet"] : cow.why;
  return html`
    <button type="button" class="bar-main q-next" @click=${() => app.openCow(cowKey)}>
      <b><small>${isBegun ? "Go on with" : "Next"}</small> ${cow.number}</b>
      <span class="q-why">${meaning ? mark(meaning) : nothing} ${why.length ? html`<span>${whyWords(why)}</span>` : nothing}</span>
    </button>`;
}

/* The longest tale is told on her own page; here the first two reasons must do. The mark has said "lame" already. */
function whyWords(why) {
  const words = why.map((one) => one.replace(/^lame, /, ""));
  return words.length > 2 ? `${words.slice(0, 2).join("; ")} …` : words.join("; ");
}

function anotherCow(first) {
  return html`<a class="bar-second q-another" href="#/number">${first ? "Another cow" : "Which cow is in the crush?"}</a>`;
}

function remainList(app, rest, hasNext) {
  if (rest.length === 0) {
    return hasNext ? nothing : html`<p class="q-none">Nobody is left on the list. Any other cow goes in by her number.</p>`;
  }
  const marked = rest.filter((one) => one.mark);
  const plain = rest.filter((one) => !one.mark);
  return html`
    ${marked.length ? html`<h2 class="q-h2">First: lame, re-checks, blocks</h2><ul class="q-rows">${marked.map((one) => markedRow(app, one))}</ul>` : nothing}
    ${plain.length ? html`<h2 class="q-h2">${marked.length ? "Then" : "Still to come"}: ${plain.length}</h2>
      <ul class="q-tiles">${plain.map((one) => tile(app, one))}</ul>` : nothing}`;
}

function markedRow(app, { cowKey, cow, mark: meaning }) {
  return html`<li><button type="button" class="q-row" @click=${() => app.openCow(cowKey)}><b>${cow.number}</b>
    <span class="q-why">${mark(meaning)} <span>${whyWords(cow.why)}</span></span></button></li>`;
}

function tile(app, { cowKey, cow }) {
  const why = cow.why.join("; ");
  return html`<li><button type="button" class="q-tile" @click=${() => app.openCow(cowKey)}><b>${cow.number}</b>${why ? html`<span>${why}</span>` : nothing}</button></li>`;
}
