/* When the foot is looked at again: proposed by rule, changed by hand. */
import { html } from "../../trimops/lib/lit-html.js";
import { inUse } from "./cow_more.js";
import { changeFoot } from "./faces/foot.js";
import { rechecksFor } from "./rules.js";
import { dayWords } from "./when.js";

const BY_HAND = [3, 7, 14, 21, 28, 42];

export function lookAgain(app, cowKey, foot, cow) {
  const due = dueOf(app, foot, cow, app.draftOf(cowKey).content.entry);
  const set = (days) => changeFoot(app, cowKey, foot.foot, (now) => ({ ...now, look_again_days: days }));
  const byHand = foot.look_again_days;
  const words = due ? `Look again ${dayWords(due.due_from)} to ${dayWords(due.due_until)}: ${due.what}` : "No need to look again";
  return html`<details class="more look-again">
    <summary>${words}${byHand === null ? "" : " (set by hand)"}</summary>
    <div class="choices">
      <button class="key" aria-pressed=${String(byHand === null)} @click=${() => set(null)}>By rule</button>
      ${BY_HAND.map((days) => html`<button class="key" aria-pressed=${String(byHand === days)} @click=${() => set(days)}>in ${days} days</button>`)}
      <button class="key" aria-pressed=${String(byHand === 0)} @click=${() => set(0)}>no need</button>
    </div>
    <label class="words" for="look-again-days">Another number of days</label>
    <input id="look-again-days" class="words" type="number" inputmode="numeric" min="0" max="365" .value=${inUse("look-again-days", byHand === null ? "" : String(byHand))}
      @input=${(event) => set(daysOf(event.target.value))}>
  </details>`;
}

function dueOf(app, foot, cow, entry) {
  const alone = { ...entry, feet: [foot] };
  return rechecksFor(alone, app.papers, app.papers.visit.day, cow.known?.blocks ?? [])[0] ?? null;
}

function daysOf(text) {
  const days = Number.parseInt(text, 10);
  return Number.isFinite(days) && days >= 0 && days <= 365 ? days : null;
}
