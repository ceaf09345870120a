/* What stands in the way of keeping a cow (it must be mended), or looks odd (it is asked once). */
import { html } from "../../trimops/lib/lit-html.js";
import { withCapital } from "./words.js";

export function askedBox(app, cowKey) {
  const { asked } = app;
  if (asked?.cowKey !== cowKey) return "";
  if (asked.leaves) return leaving(app, cowKey, asked.leaves);
  const isRefused = asked.faults.length > 0;
  const lines = isRefused ? asked.faults : asked.odd;
  const where = (line) => (line.foot ? `${withCapital(app.papers.labels.feet[line.foot])}: ` : "");
  return html`<div class=${`asked-box ${isRefused ? "said-urgent" : "said-due"}`} role="alert" tabindex="-1">
    <p><strong>${isRefused ? "Mend this first" : "Sure?"}</strong></p>
    <ul>${lines.map((line) => html`<li>${where(line)}${line.text}</li>`)}</ul>
    <div class="row-of-two">
      <button class="key" @click=${() => unask(app)}>${isRefused ? "Mend it" : "Look again"}</button>
      ${isRefused ? "" : html`<button class="key" data-save="sure" @click=${() => app.saveCow(cowKey, asked.extra ?? null, true)}>It is right: done</button>`}
    </div>
  </div>`;
}

/** Back to what stands on the screen, nothing changed. */
function unask(app) {
  app.asked = null;
  app.redraw();
  document.querySelector("main .bar [data-save]")?.focus();
}

/** She goes as she came: what was put down goes with her, so it is asked. */
function leaving(app, cowKey, { pictures }) {
  const draft = app.draftOf(cowKey);
  const isOfTheDay = Boolean(draft?.after || draft?.mends);
  const taken = pictures ? ` and ${pictures} ${pictures === 1 ? "picture" : "pictures"}` : "";
  const stay = () => {
    app.asked = null;
    app.redraw();
    document.querySelector("[data-leave]")?.focus();
  };
  return html`<div class="asked-box said-due" role="alert" tabindex="-1">
    <p><strong>${isOfTheDay ? "Leave her as she was?" : "Let her go?"}</strong> ${isOfTheDay ? "What you changed" : `What you noted${taken}`} goes from this phone for good.</p>
    <div class="row-of-two"><button class="key" @click=${stay}>Keep her here</button>
      <button class="key" @click=${() => app.leaveCow(cowKey, true)}>${isOfTheDay ? "Leave the change" : "Let her go"}</button></div>
  </div>`;
}
