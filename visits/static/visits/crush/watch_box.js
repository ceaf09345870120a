/* The box above every face that asks whoever works alone whether all is well. */

import { html, nothing } from "../../trimops/lib/lit-html.js";
import { mark } from "./faces/marks.js";
import { clock } from "./when.js";

/** @param {object} app @returns {object} nothing while nobody asks */
export function watchBox(app) {
  const watch = app.watch;
  if (!watch?.asks && !watch?.said) return nothing;
  return html`<section class="watch-box" role="alert" aria-label="Are you well?">
    <p>${mark({ kind: "urgent", word: watch.isTold ? "Others are told" : "Asked" })} <b>Are you well? ${watch.farm}</b> ${words(app, watch)}</p>
    <div class="row-of-two">
      <button type="button" class="act act-main" data-well="more" @click=${() => app.watcher.say("more")}>I am well, 30 minutes more</button>
      <button type="button" class="act" data-well="done" @click=${() => app.watcher.say("done")}>I am well, finished</button>
    </div>
  </section>`;
}

function words(app, watch) {
  if (watch.said && watch.isUnheard) return "Not sent: no signal. It is sent as soon as there is some. Until then somebody may come to look: ring if you can.";
  if (watch.said) return "Sending your answer.";
  if (watch.isTold) return "Others are told that you did not answer. One tap, and they hear that all is well.";
  return `Answer by ${clock(watch.until, app.papers.visit.zone)}, or others are told.`;
}
