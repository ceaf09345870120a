/* Kit used: counts itself from the cows, and can be put right by hand. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { inTurn, keepThing, refusedOf } from "../bench_keep.js";
import { bladesOf } from "../blade_turns.js";
import { handWords } from "../blade_words.js";
import { extraFor, kitUsed, lastsFor, quantity, seenWords } from "../kit_count.js";
import { tallyOf } from "../tally.js";

const POURED = ["ml", "g"]; // counted in tens: nobody knows glue to the millilitre
const faults = new Map();

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const rows = kitUsed(app.shown, app.papers);
  const tally = tallyOf(app.shown, app.papers, new Date());
  return html`
    <h1 tabindex="-1">${heading(rows, tally)}</h1>
    <div class="evidence"><p>Counted from the cows noted. Lost or broken something, or used more? Put the number right;
      it goes on counting from there.</p></div>
    ${rows.length
      ? html`<ul class="kit">${rows.map((row) => line(app, row, tally))}</ul>`
      : html`<div class="empty"><p>No blocks, wraps or glue are kept for this business. The office adds them; then they count
          themselves here.</p></div>`}
    ${knives(app)}`;
}

function knives(app) {
  const rows = bladesOf(app);
  if (!rows.length) return nothing;
  return html`<h2>Knives</h2><p><a class="act" href="#/knives">${handWords(rows)}</a></p>`;
}

function heading(rows, tally) {
  const over = rows.filter((row) => row.left !== null && row.left < 0);
  if (over.length) return `More used than the van had: ${namesOf(over)}`;
  const short = rows.filter((row) => lastsFor(row, tally) !== null);
  if (short.length) return `Runs short for the cows to come: ${namesOf(short)}`;
  const used = rows.filter((row) => row.used > 0).length;
  return used ? `Kit used so far: ${used} of ${rows.length} things` : "No kit used yet";
}

function namesOf(rows) {
  return rows.map((row) => row.item.name).join(", ");
}

function line(app, row, tally) {
  const { item } = row;
  const id = `kit-${item.id}`;
  const step = POURED.includes(item.unit) ? 10 : 1;
  const by = (change) => () => inTurn(app, () => stepBy(app, item.id, change));
  const fault = faults.get(item.id);
  return html`<li>
    <h2 id="${id}-name">${item.name}</h2>
    <div class="stepper" role="group" aria-labelledby="${id}-name">
      <button type="button" aria-label="${step} fewer" aria-disabled=${row.used <= 0 ? "true" : "false"} @click=${by(-step)}>−${stepWords(step)}</button>
      <label class="unseen" for=${id}>Used in all, ${unitWords(item.unit)}</label>
      <input id=${id} inputmode="decimal" autocomplete="off" .value=${quantity(row.used)} aria-describedby="${id}-words"
        aria-invalid=${fault ? "true" : nothing} @change=${(event) => typed(app, item.id, event.target)}>
      <button type="button" aria-label="${step} more" @click=${by(step)}>+${stepWords(step)}</button>
      <span class="kit-unit">${unitWords(item.unit)}</span>
    </div>
    <p id="${id}-words" role="status">${words(row)}${leftWords(row)}${shortWords(row, tally)}
      ${fault ? html`<span class="mark mark-urgent">${fault}</span>` : nothing}</p>
    ${refusedOf(app, "kit").filter((one) => one.content.consumable === item.id).map(
      (one) => html`<p class="mark mark-urgent">Not taken: ${one.faults.map((each) => each.reason).join(" ")} Give the number again.</p>`,
    )}
  </li>`;
}

function stepWords(step) {
  return step === 1 ? "" : ` ${step}`;
}

function unitWords(unit) {
  if (unit === "each") return "used";
  return unit === "pair" ? "pairs" : unit;
}

/* Both figures stay in sight: what counted itself, and what was put right by hand. */
function words({ byCows, once, mixed, extra }) {
  const parts = [`${quantity(byCows)} counted from the cows`];
  if (once) parts.push(`${quantity(once)} for the visit`);
  if (mixed) parts.push(`${quantity(mixed)} mixed for wash-downs`);
  if (extra) parts.push(`${quantity(Math.abs(extra))} ${extra > 0 ? "more" : "fewer"} by hand`);
  return `${parts.join(", ")}.`;
}

function shortWords(row, tally) {
  const cows = lastsFor(row, tally);
  if (cows === null) return nothing;
  const toCome = tally.left === 1 ? "1 cow is" : `${tally.left} cows are`;
  const lasts = cows === 0 ? "Not enough for one cow more" : `Enough for about ${cows === 1 ? "1 cow" : `${cows} cows`}`;
  return html` <span class="mark mark-due">Runs short</span> ${lasts} as used today; ${toCome} still to come.`;
}

function leftWords({ item, left }) {
  if (left === null) return " What the van has is not known.";
  const words = `Left in the van: ${seenWords(left, item.unit)}.`;
  if (left >= 0) return ` ${words}`;
  return html` <span class="mark mark-due">${words}</span> More used than was there: count the van again.`;
}

async function typed(app, id, input) {
  const value = Number(input.value.trim().replace(",", ".").replace("−", "-") || NaN);
  if (!(value >= 0 && value < 100000)) {
    faults.set(id, "Give a number, 0 or more.");
    app.redraw();
    return;
  }
  await inTurn(app, () => keepUsed(app, id, () => value));
}

/* Not below nothing: what was counted too much can only be taken off. */
async function stepBy(app, id, change) {
  await keepUsed(app, id, (used) => Math.max(0, used + change));
}

async function keepUsed(app, id, newUsed) {
  faults.delete(id);
  const row = kitUsed(app.shown, app.papers).find(({ item }) => item.id === id);
  const used = newUsed(row.used);
  if (used === row.used) return app.redraw();
  const refused = refusedOf(app, "kit").find((one) => one.content.consumable === id) ?? null;
  const content = { consumable: id, extra: extraFor(used, row.counted) };
  await keepThing(app, { kind: "kit", content, on: refused ?? row.kept });
  return app.say(`${row.item.name}: ${quantity(used)} used.`, "done");
}
