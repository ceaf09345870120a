/* What stands on the foot so far, each line with its way out; when it is looked at again. */
import { html } from "../../trimops/lib/lit-html.js";
import { isTouched, withoutAction, withoutFinding } from "./entry.js";
import { changeFoot } from "./faces/foot.js";
import { lookAgain } from "./look_again.js";
import { FUNCTIONAL_STEPS } from "./rules_feet.js";
import { actionWords, findingWords } from "./words.js";

export function footDone(app, cowKey, foot, cow) {
  if (!isTouched(foot)) return html`<p class="hint">Tap where you see something. Numbers are the places of the claw map.</p>`;
  const { papers } = app;
  const drop = (change) => changeFoot(app, cowKey, foot.foot, change);
  const shown = foot.actions.filter((each) => !FUNCTIONAL_STEPS.includes(each.kind));
  const steps = foot.actions.length - shown.length;
  return html`<ul class="done-list">
    ${foot.findings.map((found) => html`<li><span><strong>${findingWords(found, papers)}</strong></span>
      <button class="key small" aria-label=${`Take away ${findingWords(found, papers)}`} @click=${() => drop((now) => withoutFinding(now, found))}>Take away</button></li>`)}
    ${steps ? html`<li><span>${steps === 6 ? "Trimmed: length, level, model on both claws" : `${steps} of the 6 trimming steps`}</span></li>` : ""}
    ${shown.map((each) => html`<li><span>${actionWords(each, papers)}</span>
      <button class="key small" aria-label=${`Take away ${actionWords(each, papers)}`} @click=${() => drop((now) => withoutAction(now, each))}>Take away</button></li>`)}
  </ul>
  ${lookAgain(app, cowKey, foot, cow)}`;
}
