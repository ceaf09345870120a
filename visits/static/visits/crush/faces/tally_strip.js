/* How the day stands, in figures, and whether it will be clear of the milking. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { milkingCaution, tallyOf } from "../tally.js";
import { clock } from "../when.js";
import { doneAboutWords, perCowWords } from "../words.js";
import { mark } from "./marks.js";

/** @param {object} app @returns {object} a template, or nothing before the first cow */
export function tallyStrip(app) {
  const tally = tallyOf(app.shown, app.papers, new Date());
  if (tally.done === 0) return nothing;
  const { zone } = app.papers.visit;
  const caution = milkingCaution(tally, (iso) => clock(iso, zone));
  return html`
    <ul class="q-tally" aria-label="The day so far">
      ${figure(tally.done, tally.done === 1 ? "cow" : "cows")} ${figure(tally.blocks, tally.blocks === 1 ? "block" : "blocks")}
      ${figure(tally.wraps, tally.wraps === 1 ? "wrap" : "wraps")} ${paceFigure(tally)}
    </ul>
    ${caution ? html`<p class="q-end">${mark({ kind: "due", word: caution })}</p>` : endLine(tally, zone)}`;
}

function figure(number, word) {
  return html`<li><b>${number}</b> ${word}</li>`;
}

function paceFigure({ secondsPerCow, by }) {
  if (secondsPerCow === null) return nothing;
  const [number, ...words] = perCowWords(secondsPerCow).split(" ");
  return figure(number, `${words.join(" ")}${by === "crush" ? " in the crush" : ""}`);
}

/* An estimate, and what it must be clear of, if anybody milks there today. */
function endLine({ finish, doneBy }, zone) {
  if (!finish) return nothing;
  const milking = doneBy ? `, milking at ${clock(doneBy, zone)}` : "";
  return html`<p class="q-end">At this pace ${doneAboutWords(finish, zone)}${milking}.</p>`;
}
