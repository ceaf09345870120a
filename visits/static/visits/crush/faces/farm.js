/* The farm: how to get in and work there, whom to ring, and the cautions of the work. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { hygieneWords, peopleToRing } from "../farm_parts.js";

const CAUTIONS = [
  ["grinder", "Grinder"],
  ["glue", "Glue"],
  ["belly_band", "Belly band"],
  ["blood", "Blood"],
  ["medicines", "Medicines"],
  ["health", "Your own health"],
  ["toe", "Toe"],
  ["late_pregnant", "Close to calving"],
  ["alone", "Working alone"],
];
// Lone work has its line among those that are ticked before the first cow; the papers may bring a longer one.
/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const { farm, visit } = app.papers;
  return html`
    <h1 tabindex="-1">${farm.name}</h1>
    <div class="evidence">
      ${hygieneWords(farm)}
      ${visit.note ? html`<p class="keep-lines">Asked for: ${visit.note}</p>` : nothing}
    </div>
    <h2>Getting in</h2>
    ${farm.access_notes
      ? html`<p class="keep-lines">${farm.access_notes}</p>`
      : html`<p>Nothing is noted about gate, yard or dog.</p>`}
    ${farm.address ? html`<p class="keep-lines">${farm.address}</p>` : nothing}
    ${wayThere(farm)}
    ${peopleToRing(farm, "Who to ring")}
    ${setUp(farm)}
    <h2>Cautions</h2>
    <dl class="cautions">${CAUTIONS.map((row) => caution(app.papers.cautions, row))}</dl>
    <p class="quiet">Usual advice. Local rules, the makers' own papers and the vet come first.</p>`;
}

/* A geo: address (RFC 5870) opens whatever map the phone has; that map may want signal, this page does not. */
function wayThere({ latitude, longitude }) {
  if (latitude === null || latitude === undefined) return nothing;
  return html`<p><a class="act" href="geo:${latitude},${longitude}">Open the way in the phone's map</a></p>
    <p class="quiet number-line">${latitude}, ${longitude}</p>`;
}

function setUp(farm) {
  return html`<h2>Set-up</h2>
    ${farm.set_up.length
      ? html`<ul>${farm.set_up.map((text) => html`<li>${text}</li>`)}</ul>`
      : html`<p>Nothing is noted about crush, water, light and power.</p>`}`;
}

function caution(cautions, [key, word]) {
  const text = cautions[key] ?? "";
  return text ? html`<div><dt>${word}</dt><dd>${text}</dd></div>` : nothing;
}
