/* What is not needed for every cow: a note, the vet, a picture. */
import { html } from "../../trimops/lib/lit-html.js";
import { photoPart } from "./photo_part.js";
import { referrals } from "./rules.js";

export function cowMore(app, cowKey, draft) {
  const { entry, told_vet } = draft.content;
  const forVet = referrals(entry, app.papers);
  return html`
    ${forVet.length ? vetBox(app, cowKey, forVet, told_vet) : ""}
    <details class="more" ?open=${Boolean(entry.note || entry.for_vet)}>
      <summary>Note, picture, vet</summary>
      ${field(cowKey, "note", "Note", entry.note, 300, (text) => app.changeEntry(cowKey, (now) => ({ ...now, note: text })))}
      ${field(cowKey, "for-vet", "For the vet: what you saw (not what it is)", entry.for_vet, 200, (text) =>
        app.changeEntry(cowKey, (now) => ({ ...now, for_vet: text })))}
      ${photoPart(app, draft.record, "")}
      <p class="quiet">${app.papers.cautions.medicines}</p>
    </details>`;
}

function vetBox(app, cowKey, forVet, told) {
  const where = (line) => (line.foot ? `${app.papers.labels.feet[line.foot]}: ` : "");
  return html`<div class="said-urgent vet-box">
    <p><strong>For the vet</strong></p>
    <ul>${forVet.map((line) => html`<li>${where(line)}${line.reason}</li>`)}</ul>
    ${field(cowKey, "told", "Whom you told", told, 120, (text) =>
      app.change(cowKey, (now) => ({ ...now, content: { ...now.content, told_vet: text } })))}
  </div>`;
}

/** A field whose text is kept with every letter. */
export function field(key, name, label, value, most, keep) {
  const id = `${key}-${name}`;
  return html`<label class="words" for=${id}>${label}</label>
    <input id=${id} class="words" type="text" maxlength=${most} autocomplete="off" .value=${inUse(id, value)}
      @input=${(event) => keep(event.target.value)}>`;
}

/** While a field is written in, its own letters stand: those on the disk are some letters behind. */
export function inUse(id, value) {
  return document.activeElement?.id === id ? document.activeElement.value : value;
}
