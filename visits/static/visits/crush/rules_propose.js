/* What a trimmer usually does after what was found on a foot: proposals, all of them his to change. */

import { FEET, action, emptyFoot } from "./entry.js";
import { CUTS, FUNCTIONAL_STEPS, clawsInOrder, soundPartner } from "./rules_feet.js";
import { isActiveStage, isOfTheHorn, lesionOf } from "./rules_lesions.js";
import { soreClaws } from "./rules_trim.js";

const SKIN_SORES = ["DD", "ID"];

/**
 * @param {object} foot  a foot of an entry
 * @param {{foot, claw, kind}[]} [standing]  blocks of this cow still on from before
 * @returns {{done: object[], offer: object[]}} actions to tick by default; actions to offer, in order. What is on the
 *   foot already is in neither. Ticked: the functional steps (T1 order) and on a sore claw relief and loose horn off.
 *   A block is only ever offered, and only on the sound claw beside a sore one (T8).
 */
export function proposedActions(foot, papers, standing = []) {
  const steps = functionalSteps(foot);
  const relief = soreClaws(foot, papers).flatMap((claw) => ["relief", "loose_horn"].map((kind) => action(kind, claw)));
  const [done, offer] = [[], [...blocksOff(foot, standing)]];
  // Blood or sensitive tissue in sight: work stops (T11), so nothing is taken for done.
  if (foot.drew_blood || foot.sensitive_tissue) offer.push(...afterwards(foot, papers), ...steps, ...relief);
  else if (isShort(foot, papers)) {
    // The wall has nothing to spare (T10): whether it is cut at all is for the trimmer to say.
    done.push(...relief);
    offer.push(...afterwards(foot, papers), ...steps, ...noCut(foot, relief));
  } else {
    done.push(...steps, ...relief);
    offer.push(...afterwards(foot, papers));
  }
  const open = (wanted) => isOpen(foot, wanted);
  return { done: done.filter(open), offer: offer.filter(open) };
}

/**
 * Feet of a plain functional trim: the three steps on both claws of each.
 * @param {string[]} [feet]  which; left out: as many as the business lifts of a cow that walks sound, hind feet first
 */
export function fourFeet(papers, feet = FEET.slice(0, papers.figures.trim.feet_lifted ?? 4)) {
  return feet.map((foot) => ({ ...emptyFoot(foot), actions: functionalSteps({ foot }) }));
}

/** Feet looked at and found in order: no cut needed on either claw. */
export function lookedAt(feet = FEET) {
  const uncut = (foot) => clawsInOrder(foot).map((claw) => action("no_cut", claw));
  return feet.map((foot) => ({ ...emptyFoot(foot), actions: uncut(foot) }));
}

/** The kind of block to offer first: of what the van carries the most. */
export function usualBlock(papers) {
  return blockKinds(papers)[0];
}

const functionalSteps = ({ foot }) =>
  clawsInOrder(foot).flatMap((claw) => FUNCTIONAL_STEPS.map((kind) => action(kind, claw)));

const isShort = (foot, papers) => foot.wall_mm !== null && foot.wall_mm <= papers.figures.trim.shortest_wall_mm;

function noCut(foot, relief) {
  const isSore = (claw) => relief.some((step) => step.claw === claw);
  return clawsInOrder(foot.foot).filter((claw) => !isSore(claw)).map((claw) => action("no_cut", claw));
}

const blocksOff = (foot, standing) =>
  standing.filter((block) => block.foot === foot.foot).map((block) => action("block_off", block.claw));

/* Block, wrap and dressing, the likeliest first; then the other kinds of block; then loose horn of a slight lesion. */
function afterwards(foot, papers) {
  const blocks = blocksFor(foot, papers);
  const isSore = ({ lesion }) => isOfTheHorn(papers, lesion) && lesionOf(papers, lesion).alarm;
  const cover = isSkinSore(foot, papers) ? [action("dressing", ""), action("wrap", "")] : [];
  if (!cover.length && foot.findings.some(isSore)) cover.push(action("wrap", ""), action("dressing", ""));
  return [...blocks.slice(0, 1), ...cover, ...slightHorn(foot, papers), ...blocks.slice(1)];
}

function blocksFor(foot, papers) {
  const sore = soreClaws(foot, papers);
  if (sore.length !== 1 || foot.actions.some((each) => each.kind === "block")) return [];
  return blockKinds(papers).map((kind) => action("block", soundPartner(sore[0]), kind));
}

function slightHorn(foot, papers) {
  const sore = soreClaws(foot, papers);
  const slight = (claw) => !sore.includes(claw)
    && foot.findings.some((finding) => finding.claw === claw && isOfTheHorn(papers, finding.lesion));
  return clawsInOrder(foot.foot).filter(slight).map((claw) => action("loose_horn", claw));
}

/* Dermatitis with a live sore, or of a stage not said yet. */
function isSkinSore(foot, papers) {
  return foot.findings.some((finding) => SKIN_SORES.includes(finding.lesion)
    && (!finding.dd_stage || isActiveStage(papers, finding.dd_stage)));
}

/* Kinds of block, the one of which the van carries the most first; kinds it has none of come last. */
function blockKinds(papers) {
  const carried = (kind) => papers.consumables
    .filter((item) => item.kind === "block" && item.uses.some((use) => use.block_kind === kind))
    .reduce((sum, item) => sum + Math.max(0, Number(item.in_van ?? 0)), 0);
  return Object.keys(papers.labels.blocks).sort((one, other) => carried(other) - carried(one));
}

/* What is there already, or would contradict "no cut needed", is not proposed again. */
function isOpen(foot, wanted) {
  const stands = (kind, claws) => foot.actions.some((each) => each.kind === kind && claws.includes(each.claw));
  if (CUTS.includes(wanted.kind) && stands("no_cut", ["", wanted.claw])) return false;
  return !stands(wanted.kind, [wanted.claw]);
}
