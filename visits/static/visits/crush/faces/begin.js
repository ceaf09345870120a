/* Before the first cow: the check of oneself, the kit and the crush (T14), and what to know of the place. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { putBegun } from "../store.js";
import { hygieneWords, peopleToRing } from "../farm_parts.js";
import { clock } from "../when.js";

const ticked = new Set();

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const begun = begunAt(app);
  return begun ? alreadyBegun(app, begun) : check(app);
}

/* However it was begun: on this phone, on another one, or at the desk. */
function begunAt(app) {
  return app.kept.phone.begun?.at ?? app.papers.visit.started_at ?? null;
}

function alreadyBegun(app, at) {
  const { farm, visit } = app.papers;
  return html`
    <h1 tabindex="-1">${farm.name}: begun at ${clock(at, visit.zone)}</h1>
    <p>The check before the first cow is done.</p>
    <div class="actions"><a class="act act-main" href="#/">To the next cow</a> <a class="act" href="#/farm">The farm</a></div>`;
}

function check(app) {
  const { farm, cautions } = app.papers;
  const missing = cautions.before.filter((text) => !ticked.has(text));
  return html`
    <h1 tabindex="-1">Before the first cow at ${farm.name}</h1>
    <div class="evidence">
      ${hygieneWords(farm)}
      ${farm.access_notes ? html`<p class="keep-lines">${farm.access_notes}</p>` : nothing}
    </div>
    <fieldset class="before">
      <legend>Check, then tick</legend>
      ${cautions.before.map((text, index) => tickRow(app, text, index))}
    </fieldset>
    <p id="before-missing" role="status" class="before-missing">${missingWords(missing, cautions.before.length)}</p>
    <div class="actions">
      <button
        type="button"
        class="act-main"
        aria-disabled=${missing.length ? "true" : "false"}
        aria-describedby="before-missing"
        @click=${() => begin(app, missing)}
      >All checked: begin</button>
    </div>
    ${peopleToRing(farm, "Who to ring")}`;
}

function tickRow(app, text, index) {
  const turn = (event) => {
    if (event.target.checked) ticked.add(text);
    else ticked.delete(text);
    app.redraw();
  };
  return html`<label class="tick-row">
    <input type="checkbox" id="before-${index}" .checked=${ticked.has(text)} @change=${turn}>
    <span>${text}</span>
  </label>`;
}

function missingWords(missing, all) {
  if (!missing.length) return "All ticked.";
  if (missing.length === all) return `None of the ${all} is ticked yet.`;
  return `Still to check: ${missing.map(firstWords).join("; ")}.`;
}

/* "Knives sharp, disc whole and of the right kind, guard on." is known by its "Knives sharp". */
function firstWords(text) {
  return text.split(/[,;:.]/)[0];
}

async function begin(app, missing) {
  if (app.isBegun()) return;
  if (missing.length) {
    const first = app.papers.cautions.before.indexOf(missing[0]);
    document.getElementById(`before-${first}`)?.focus();
    app.say(`Not yet: ${missing.length === 1 ? "one is" : `${missing.length} are`} not ticked.`, "due");
    return;
  }
  const begun = { at: new Date().toISOString(), checked: true };
  try {
    await putBegun(app.visit, begun);
  } catch (fault) {
    app.say(`Not begun: this phone could not write it down (${fault.message}). Make room on it, then try again.`, "urgent");
    return;
  }
  app.kept.phone.begun = begun;
  ticked.clear();
  app.say(`Begun at ${clock(begun.at, app.papers.visit.zone)}.`, "done");
  if (location.hash !== "#/") app.keptMessage = app.message;
  app.go("#/");
  document.querySelector("main")?.focus(); // the button is gone
}
