/* What kind of trim it was, and what cannot be put down because it contradicts itself or would harm (T8).
   Twin of visits/domain/actions.py and trim_refusals.py: the same faults in the same order and the same words. */

import { CLAWS } from "./entry.js";
import { CORRECTIVE_STEPS, CUTS, FUNCTIONAL_STEPS, blocksOn, capital, scaleOf } from "./rules_feet.js";
import { isOfTheHorn, isZone, lesionOf } from "./rules_lesions.js";

/** What all of it amounts to (T4): "corrective", "functional" or "check" (only looked at). */
export function trimKind(entry) {
  const kinds = entry.feet.flatMap((foot) => foot.actions.map((action) => action.kind));
  if (kinds.some((kind) => CORRECTIVE_STEPS.includes(kind))) return "corrective";
  return kinds.some((kind) => FUNCTIONAL_STEPS.includes(kind)) ? "functional" : "check";
}

/** The claws of a foot on which a painful lesion of the horn was seen, outer before inner. */
export function soreClaws(foot, papers) {
  const hurts = (finding) => isOfTheHorn(papers, finding.lesion)
    && (lesionOf(papers, finding.lesion).alarm || finding.severity >= 2);
  return CLAWS.filter((claw) => foot.findings.some((finding) => finding.claw === claw && hurts(finding)));
}

/**
 * Every fault that must be mended before the cow is kept; empty when there is none. `field` is its path in the entry.
 * @returns {{rule: string, foot: string|null, text: string, field: string}[]}
 */
export function refusals(entry, papers) {
  const ofFeet = entry.feet.flatMap((foot, place) => [...under(`feet[${place}]`, footFaults(foot, papers))]);
  return [...cowFaults(entry, papers), ...ofFeet];
}

function* cowFaults(entry, papers) {
  const feet = entry.feet.map((foot) => foot.foot);
  if (new Set(feet).size !== feet.length) yield fault("foot-twice", null, "The same foot is noted twice.", "feet");
  const scale = scaleOf(entry, papers);
  const score = entry.mobility_score;
  if ((entry.mobility_scale === "") !== (score === null)) {
    const missing = score === null ? "mobility_score" : "mobility_scale";
    yield fault("mobility", null, "A mobility score needs its scale, and a scale its score.", missing);
  } else if (scale && !scale.scores.includes(score)) {
    const words = `${scale.label} runs ${scale.scores[0]} to ${scale.scores.at(-1)}, not ${score}.`;
    yield fault("mobility", null, words, "mobility_score");
  }
}

function* footFaults(foot, papers) {
  for (const [place, finding] of foot.findings.entries()) {
    yield* under(`findings[${place}]`, findingFaults(foot.foot, finding, papers));
  }
  for (const [place, action] of foot.actions.entries()) {
    yield* under(`actions[${place}]`, actionFaults(foot, action, papers));
  }
  if (new Set(blocksOn(foot).map((block) => block.claw)).size > 1) {
    yield fault("T8", foot.foot, "Both claws of the foot have a block: one must stay off the ground.", "actions");
  }
}

function* findingFaults(foot, finding, papers) {
  const { name, on_skin: onSkin } = lesionOf(papers, finding.lesion);
  if (finding.zone !== null && !isZone(papers, finding.zone)) {
    yield fault("zone", foot, `The map has zones 0 to 12, not ${finding.zone}.`, "zone");
  }
  if (!(finding.severity >= 1 && finding.severity <= 3)) {
    yield fault("severity", foot, `How bad runs from 1 to 3, not ${finding.severity}.`, "severity");
  }
  if (finding.dd_stage && finding.lesion !== "DD") {
    const said = `Only digital dermatitis has a stage M0 to M4.1; ${name} has none.`;
    yield fault("stage", foot, said, "dd_stage");
  }
  if (onSkin !== (finding.claw === "skin")) {
    const place = onSkin ? "the skin" : "the outer or inner claw";
    yield fault("place", foot, `${capital(name)} is noted on ${place}.`, "claw");
  }
}

function* actionFaults(foot, action, papers) {
  if (action.kind === "block") yield* blockFaults(foot, action, papers);
  else if (action.block_kind) {
    yield fault("block-kind", foot.foot, "A kind of block belongs to a block put on.", "block_kind");
  }
  if (action.kind === "no_cut" && wasCut(foot, action.claw)) {
    yield fault("T10", foot.foot, "The claw is both cut and “no cut needed”: take one away.", "kind");
  }
}

function* blockFaults(foot, action, papers) {
  if (!action.block_kind) {
    const said = "Say which block went on: wood, rubber, foam or shoe.";
    yield fault("block-kind", foot.foot, said, "block_kind");
  }
  if (!CLAWS.includes(action.claw)) {
    yield fault("T8", foot.foot, "A block goes on a claw: say outer or inner.", "claw");
  } else if (soreClaws(foot, papers).includes(action.claw)) {
    const said = `The block is on the sore ${papers.labels.claws[action.claw]}. `
      + "It goes on the sound claw beside it, so that the sore one carries no weight.";
    yield fault("T8", foot.foot, said, "claw");
  }
}

/** Whether a claw was cut; what names no claw was done to both. */
export function wasCut(foot, claw) {
  const same = (action) => !claw || !action.claw || action.claw === claw;
  return foot.actions.some((action) => CUTS.includes(action.kind) && same(action));
}

const fault = (rule, foot, text, field) => ({ rule, foot, text, field });

function* under(path, faults) {
  for (const each of faults) yield { ...each, field: `${path}.${each.field}` };
}
