/* What the phone knows of a cow from before: why she is here, blocks, re-checks, the last trims, cautions. */
import { html } from "../../trimops/lib/lit-html.js";
import { dayWords, daysAfter } from "./when.js";

const LATE_DAYS = 28; // within four weeks of calving: Thomsen 2020, see the caution's own words

/** What must be seen before her feet are: why she is here, a block, how near she is to calving. */
export function cowReasons(app, known) {
  if (!known) return html`<p class="quiet">Added here: nothing is known of her yet.</p>`;
  const { papers } = app;
  return html`<div class="history">
    ${lateCaution(papers, known, papers.visit.day)}
    ${known.why.length ? html`<p><strong>${known.why.join("; ")}</strong></p>` : ""}
    ${known.blocks.map((block) => html`<p class="is-due">Block ${papers.labels.feet[block.foot]}, ${papers.labels.claws[block.claw]}, off by ${dayWords(block.off_due)}</p>`)}
    ${known.note ? html`<p>${known.note}</p>` : ""}
  </div>`;
}

/** Her last trims, folded: the newest in a word, each in a line below. */
export function cowBefore(known) {
  if (!known) return "";
  if (!known.last.length) return html`<p class="history-before quiet">No trim of hers is known.</p>`;
  const [newest] = known.last;
  const lines = known.last.map((trim) => html`<p><strong>${dateOf(trim)}</strong> ${lineOf(trim)}</p>`);
  return html`<details class="more history-before"><summary>Before: ${dateOf(newest)}, ${newest.kind_label}</summary>${lines}</details>`;
}

function dateOf(trim) {
  return `${dayWords(trim.day)} ${trim.day.slice(0, 4)}`;
}

function lateCaution(papers, known, today) {
  const due = known.calving_due;
  if (due && due >= today && due < daysAfter(today, LATE_DAYS)) {
    return html`<details class="said-urgent"><summary>Calving ${dayWords(due)}: ask the vet before you trim</summary>
      <p>${papers.cautions.late_pregnant}</p></details>`;
  }
  if (known.dry_off_due === today) return html`<p class="said-urgent">She is dried off today: not a day to trim her. Ask the farm.</p>`;
  return "";
}

function lineOf(trim) {
  const parts = [...trim.found, ...trim.done, ...trim.for_vet.map((words) => `for the vet: ${words}`)];
  return parts.length ? `${trim.kind_label}; ${parts.join("; ")}` : `${trim.kind_label}, nothing found`;
}
