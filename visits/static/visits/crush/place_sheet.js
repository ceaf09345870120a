/* What rises when a place of the sole is tapped: which lesion, how bad, and what is usually done about it. */
import { html } from "../../trimops/lib/lit-html.js";
import { finding, toggledAction, withAction, withFinding, withoutFinding } from "./entry.js";
import { changeFoot } from "./faces/foot.js";
import { lesionOf, lesionsAt, proposedActions, soreClaws } from "./rules.js";
import { actionWords, withCapital } from "./words.js";

const SEVERITY = { 1: "slight", 2: "clear", 3: "severe" };
const OFFERED = { wrap: "Wrap", dressing: "Dressing" };
const FIRST_SHOWN = 6;

export function placeSheet(app, cowKey, foot, chosen) {
  if (!chosen) return "";
  const found = foot.findings.filter((each) => each.claw === chosen.claw && each.zone === chosen.zone);
  const open = found.find((each) => each.lesion === chosen.lesion) ?? (chosen.isAdding ? null : found.at(-1));
  return html`<section class="sheet" tabindex="-1" aria-label="What is seen here" @keydown=${(event) => event.key === "Escape" && close(app)}>
    <div class="sheet-head">
      <h2>${placeWords(app.papers, chosen)}</h2>
      <button class="key" @click=${() => close(app)}>Close</button>
    </div>
    ${open ? about(app, cowKey, foot, chosen, open) : lesions(app, cowKey, foot, chosen)}
  </section>`;
}

function placeWords(papers, { claw, zone }) {
  const side = claw === "skin" ? "Skin" : withCapital(papers.labels.claws[claw]);
  return `${side}, zone ${zone}: ${papers.zones.names[zone]}`;
}

function lesions(app, cowKey, foot, chosen) {
  const all = lesionsAt(app.papers, chosen.zone, chosen.claw);
  const shown = chosen.isAll ? all : all.slice(0, FIRST_SHOWN);
  return html`<div class="choices">
    ${shown.map((lesion) => html`<button class="key" data-lesion=${lesion.code} @click=${() => see(app, cowKey, foot, chosen, lesion)}>
      <strong>${withCapital(lesion.name)}</strong> <small>${lesion.meaning}</small></button>`)}
    ${chosen.isAll || all.length <= FIRST_SHOWN ? "" : html`<button class="key" @click=${() => set(app, { isAll: true })}>More that is seen</button>`}
  </div>`;
}

/** Put the finding down, with what is usually done for it ticked already. */
function see(app, cowKey, foot, chosen, lesion) {
  const { papers } = app;
  const severity = lesion.alarm ? 2 : 1;
  const found = finding(lesion.code, chosen.claw, chosen.zone, papers.zones.map, severity);
  app.chosen = { ...chosen, lesion: lesion.code, isAdding: false, isAll: false };
  return stay(changeFoot(app, cowKey, foot.foot, (now) => withProposed(withFinding(now, found), app, cowKey)));
}

/** The button that was pressed has gone: the focus stays in the sheet, so that Escape and the keyboard go on there. */
async function stay(change) {
  await change;
  const sheet = document.querySelector(".sheet");
  if (sheet && !sheet.contains(document.activeElement)) sheet.focus({ preventScroll: true });
}

/** The foot with what is usually done ticked; a foot left uncut on purpose stays so. */
function withProposed(foot, app, cowKey) {
  if (foot.actions.some((each) => each.kind === "no_cut")) return foot;
  const standing = app.cowOf(cowKey)?.known?.blocks ?? [];
  return proposedActions(foot, app.papers, standing).done.reduce(withAction, foot);
}

/** What was ticked for a sore claw goes with the soreness: a slip of the thumb must leave no corrective trim behind. */
function healed(before, after, papers) {
  const sore = soreClaws(after, papers);
  const freed = soreClaws(before, papers).filter((claw) => !sore.includes(claw));
  const isLeft = (each) => !(["relief", "loose_horn"].includes(each.kind) && freed.includes(each.claw));
  return { ...after, actions: after.actions.filter(isLeft) };
}

function about(app, cowKey, foot, chosen, found) {
  const { papers } = app;
  const change = (next) => changeFoot(app, cowKey, foot.foot, (now) => withProposed(healed(now, withFinding(now, { ...found, ...next }), papers), app, cowKey));
  const remove = () => {
    app.chosen = { ...chosen, lesion: null, isAdding: true };
    return stay(changeFoot(app, cowKey, foot.foot, (now) => healed(now, withoutFinding(now, found), papers)));
  };
  return html`
    <p class="sheet-found"><strong>${withCapital(lesionOf(papers, found.lesion).name)}</strong></p>
    ${found.lesion === "DD" ? stages(papers, found, change) : ""}
    <div class="row-of-three" role="group" aria-label="How bad">
      ${[1, 2, 3].map((grade) => html`<button class="key" aria-pressed=${String(found.severity === grade)}
        @click=${() => change({ severity: grade })}>${grade} ${SEVERITY[grade]}</button>`)}
    </div>
    ${offers(app, cowKey, foot)}
    <div class="row-of-two">
      <button class="key" @click=${remove}>Take it away</button>
      <button class="key" @click=${() => set(app, { isAdding: true, lesion: null })}>Another one here</button>
    </div>
    <div class="bar bar-in-sheet">
      <button class="bar-second" @click=${() => close(app)}>Another place</button>
      <button class="bar-main" data-save="main" @click=${() => keepHer(app, cowKey)}><strong>${app.draftOf(cowKey).after ? "Keep the change" : `Done with ${app.cowOf(cowKey).number}`}</strong></button>
    </div>`;
}

function stages(papers, found, change) {
  return html`<div class="choices" role="group" aria-label="Stage">
    ${papers.stages.map((stage) => html`<button class="key" aria-pressed=${String(found.dd_stage === stage.code)}
      @click=${() => change({ dd_stage: found.dd_stage === stage.code ? "" : stage.code })}>
      <strong>${stage.code}</strong> <small>${stage.name}</small></button>`)}
  </div>`;
}

/** What may go on the foot now: offered, never ticked by itself; what was chosen stays to be taken away again. */
function offers(app, cowKey, foot) {
  const standing = app.cowOf(cowKey)?.known?.blocks ?? [];
  const offered = proposedActions(foot, app.papers, standing).offer.filter((each) => ["block", "wrap", "dressing"].includes(each.kind));
  const taken = foot.actions.filter((each) => ["block", "wrap", "dressing"].includes(each.kind));
  const isSame = (a, b) => a.kind === b.kind && a.claw === b.claw && a.block_kind === b.block_kind;
  const open = offered.filter((each) => !taken.some((one) => isSame(one, each)));
  const usual = open.find((each) => each.kind === "block");
  const isLater = (each) => each.kind === "block" && each !== usual;
  const all = [...taken, ...open.filter((each) => app.chosen.isAllBlocks || !isLater(each))];
  const press = (each) => changeFoot(app, cowKey, foot.foot, (now) => toggledAction(now, each));
  if (!all.length) return "";
  return html`<div class="choices" role="group" aria-label="What goes on the foot">
    ${all.map((each) => html`<button class="key" data-action=${`${each.kind} ${each.block_kind}`.trim()}
      aria-pressed=${String(taken.includes(each))} @click=${() => press(each)}>${OFFERED[each.kind] ?? withCapital(actionWords(each, app.papers))}</button>`)}
    ${!app.chosen.isAllBlocks && open.some(isLater) ? html`<button class="key" @click=${() => set(app, { isAllBlocks: true })}>Another block</button>` : ""}
  </div>`;
}

function keepHer(app, cowKey) {
  app.chosen = null;
  return app.saveCow(cowKey);
}

function set(app, changes) {
  app.chosen = { ...app.chosen, ...changes };
  app.redraw();
  stay();
}

function close(app) {
  const { claw, zone } = app.chosen;
  app.chosen = null;
  app.redraw();
  document.querySelector(`[data-place="${claw} ${zone}"]`)?.focus();
}
