/* The end of the visit: what is the vet's, what the farm must do, who received it. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { inTurn, keepThing, refusedOf, shownOfKind } from "../bench_keep.js";
import { sumOfDay } from "../day_sum.js";
import { forgetUnsaid, signOffContent, signOffForm, startSignOff } from "../sign_off_form.js";
import { sumLists } from "../sign_off_lists.js";
import { things } from "../sign_off_words.js";
import { clock } from "../when.js";

let form = null;
let isChanging = false;

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const sum = sumOfDay(app.shown, app.papers);
  const signed = shownOfKind(app, "sign_off").at(-1) ?? null;
  const refused = refusedOf(app, "sign_off");
  const isDone = signed !== null || app.papers.visit.finished_at !== null;
  if (form?.visit !== app.visit) [form, isChanging] = [startSignOff(app, refused.at(-1) ?? signed), false];
  const isShut = isDone && !isChanging;
  return html`
    <h1 tabindex="-1">${heading(app, sum, signed)}</h1>
    ${refused.map(refusedWords)}
    ${isShut ? finished(app, signed) : nothing}
    ${sumLists(app, sum)}
    ${isShut && signed ? account(signed.content) : nothing}
    ${isShut ? nothing : signOffForm({ form, app, sum, isDone, keep: () => inTurn(app, () => keep(app, sum)) })}`;
}

function heading({ papers }, sum, signed) {
  const name = papers.farm.name;
  if (signed) return `${name}: signed off at ${clock(signed.made_at, papers.visit.zone)}`;
  if (papers.visit.finished_at) return `${name}: finished at ${clock(papers.visit.finished_at, papers.visit.zone)}`;
  if (sum.cows === 0) return `No cow noted at ${name} yet`;
  return `${things(sum.cows, "cow")} done at ${name}: sign off`;
}

function refusedWords(refused) {
  return html`<div class="mend"><h2>The sign-off was not taken</h2>
    <ul>${refused.faults.map((fault) => html`<li>${fault.reason}</li>`)}</ul></div>`;
}

function finished(app, signed) {
  const change = () => {
    form = startSignOff(app, signed);
    isChanging = true;
    app.redraw();
    document.getElementById("sign-received_by")?.focus();
  };
  return html`
    <p><span class="mark mark-done">Visit finished</span></p>
    ${signed?.content.received_by ? html`<p>Received by ${signed.content.received_by}.</p>` : nothing}
    ${signed ? html`<p role="status">${waitingWords(app, signed)}</p>` : nothing}
    <p>A cow forgotten, or noted wrongly? She can still be added or mended.</p>
    <div class="actions">
      <a class="act" href="#/number">Add a cow</a>
      <a class="act" href="#/cows">Mend a cow</a>
      <button type="button" @click=${change}>Change the sign-off</button>
    </div>`;
}

function waitingWords({ status }, signed) {
  if (status.waiting > 0) return `${things(status.waiting, "thing")} of this visit still ${status.waiting === 1 ? "waits" : "wait"} to be sent. Keep the phone on until they are.`;
  return signed.state === "waiting" ? "The sign-off waits to be sent." : "All of it is sent.";
}

function account({ was_done, farm_to_do, hygiene_note }) {
  return html`<h2>The account that was given</h2>
    <p class="keep-lines">${was_done}</p>
    <h3>For the farm to do</h3>
    <p class="keep-lines">${farm_to_do}</p>
    ${hygiene_note ? html`<p class="keep-lines">${hygiene_note}</p>` : nothing}`;
}

async function keep(app, sum) {
  const signed = shownOfKind(app, "sign_off").at(-1) ?? null;
  if (signed && !isChanging) return; // a glove that tapped twice
  form.fault = form.received_by.trim() ? "" : "Write who received the account, or who was told where it lies.";
  if (form.fault) {
    app.say("Not finished yet: who received it?", "due");
    document.getElementById("sign-received_by")?.focus();
    return;
  }
  const on = refusedOf(app, "sign_off").at(-1) ?? signed;
  await keepThing(app, { kind: "sign_off", content: signOffContent(app, form, sum), on });
  await forgetUnsaid(app);
  isChanging = false;
  app.say(signed ? "The change of the sign-off is kept." : "The visit is finished.", "done");
  window.scrollTo(0, 0);
  document.querySelector("h1")?.focus({ preventScroll: true });
}
