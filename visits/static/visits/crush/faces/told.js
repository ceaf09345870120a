/* What to know and nothing that must be done at once: what was not taken, and cows that two phones put down. */

import { html, nothing } from "../../../trimops/lib/lit-html.js";
import { twoPhones } from "../two_phones.js";
import { refusedPart } from "./told_refused.js";
import { twoPhonesPart } from "./told_two_phones.js";

/** @param {object} app @returns {import("../../../trimops/lib/lit-html.js").TemplateResult} */
export function face(app) {
  const refused = [...app.kept.writings, ...app.kept.photos].filter((one) => one.state === "refused");
  const twice = twoPhones(app.kept.writings, app.shown, app.kept.phone.settled);
  return html`
    <h1 tabindex="-1">${title(refused.length, twice.length)}</h1>
    ${refused.length ? refusedPart(app, refused) : nothing} ${twice.length ? twoPhonesPart(app, twice) : nothing}
    <p class="actions"><a class="act act-main" href="#/">To the next cow</a> <a class="act" href="#/cows">Cows of the day</a></p>`;
}

function title(refused, twice) {
  const parts = [];
  if (refused) parts.push(`${refused} to mend`);
  if (twice) parts.push(`${twice === 1 ? "1 cow" : `${twice} cows`} noted on two phones`);
  return parts.join(", ") || "Nothing to mend, no cow noted twice";
}
