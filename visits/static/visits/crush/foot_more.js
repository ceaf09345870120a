/* Signs, measures, single steps, the vet and a picture of this foot: what not every foot needs. */
import { html } from "../../trimops/lib/lit-html.js";
import { action, CLAWS, did, SIGNS, toggledAction } from "./entry.js";
import { field, inUse } from "./cow_more.js";
import { changeFoot } from "./faces/foot.js";
import { photoPart } from "./photo_part.js";
import { CUTS } from "./rules_feet.js";

const STEPS = [...CUTS, "no_cut"];

export function footMore(app, cowKey, foot, draft) {
  const { labels, cautions } = app.papers;
  const change = (next) => changeFoot(app, cowKey, foot.foot, next);
  return html`
    <details class="more"><summary>Signs, for the vet</summary>
      <div class="choices" role="group" aria-label="Signs looked for">
        ${SIGNS.map((sign) => html`<button class="key" aria-pressed=${String(foot[sign])}
          @click=${() => change((now) => ({ ...now, [sign]: !now[sign] }))}>${labels.signs[sign]}</button>`)}
      </div>
      ${foot.drew_blood || foot.sensitive_tissue ? html`<p class="said-urgent">${cautions.blood}</p>` : ""}
      ${field(`${cowKey}-${foot.foot}`, "for-vet", "For the vet: what you saw on this foot", foot.for_vet, 200, (text) =>
        change((now) => ({ ...now, for_vet: text })))}
    </details>
    <details class="more"><summary>Block, wrap, single steps</summary>
      ${onFoot(app, foot, change)}
      ${CLAWS.map((claw) => steps(app, foot, claw, change))}
      <p class="quiet">${cautions.toe} ${cautions.glue}</p>
    </details>
    <details class="more"><summary>Measures</summary>${measures(app, cowKey, foot, change)}</details>
    <details class="more"><summary>Picture of this foot</summary>${photoPart(app, draft.record, foot.foot)}</details>`;
}

function onFoot(app, foot, change) {
  const { labels } = app.papers;
  const blocks = CLAWS.flatMap((claw) => Object.keys(labels.blocks).map((kind) => action("block", claw, kind)));
  const all = [action("wrap"), action("dressing"), ...blocks];
  const stands = (each) => foot.actions.some((one) => one.kind === each.kind && one.claw === each.claw && one.block_kind === each.block_kind);
  const words = (each) => (each.kind === "block" ? `${labels.blocks[each.block_kind]}, ${labels.claws[each.claw]}` : labels.actions[each.kind]);
  return html`<div class="choices" role="group" aria-label="What goes on the foot">
    ${all.map((each) => html`<button class="key" aria-pressed=${String(stands(each))}
      @click=${() => change((now) => toggledAction(now, each))}>${words(each)}</button>`)}
  </div>`;
}

function steps(app, foot, claw, change) {
  const { labels } = app.papers;
  return html`<div class="choices" role="group" aria-label=${`Steps on the ${labels.claws[claw]}`}>
    <p class="choices-word">${labels.claws[claw]}</p>
    ${STEPS.map((kind) => html`<button class="key" aria-pressed=${String(did(foot, kind, claw))}
      @click=${() => change((now) => toggledAction(now, action(kind, claw)))}>${labels.actions[kind]}</button>`)}
  </div>`;
}

function measures(app, cowKey, foot, change) {
  const marks = app.papers.figures.trim;
  const number = (name, label, from, to) => html`<label class="words" for=${`${cowKey}-${foot.foot}-${name}`}>${label}</label>
    <input id=${`${cowKey}-${foot.foot}-${name}`} class="words" type="number" inputmode="numeric" min=${from} max=${to}
      .value=${inUse(`${cowKey}-${foot.foot}-${name}`, foot[name] === null ? "" : String(foot[name]))} @input=${(event) => change((now) => measured(now, name, event.target.value, marks))}>`;
  const isShort = foot.wall_mm !== null && foot.wall_mm < marks.shortest_wall_mm;
  const isOff = foot.toe_angle !== null && (foot.toe_angle < marks.toe_angle_from || foot.toe_angle > marks.toe_angle_to);
  return html`
    ${number("wall_mm", `Front wall, mm, from ${marks.wall_measured_from}`, 20, 200)}
    ${isShort ? html`<p class="sure">Sure? Your mark is ${marks.shortest_wall_mm} mm.</p>` : ""}
    ${number("toe_angle", "Toe angle, °", 20, 90)}
    ${isOff ? html`<p class="sure">Sure? Usual is about 50°.</p>` : ""}`;
}

/** A wall carries the landmark that it was measured from: without it the number says nothing (D2). */
function measured(foot, name, text, marks) {
  const value = Number.parseInt(text, 10);
  const kept = Number.isFinite(value) && value > 0 ? value : null;
  const from = name === "wall_mm" ? { wall_measured_from: kept === null ? "" : marks.wall_measured_from } : {};
  return { ...foot, [name]: kept, ...from };
}
