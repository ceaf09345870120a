/* When a foot must be looked at again, by the business's own figures. Twin of visits/domain/recheck_due.py. */

import { blocksOn, isLame } from "./rules_feet.js";
import { familyOf, isActiveStage, lesionOf } from "./rules_lesions.js";
import { daysAfter } from "./when.js";

/* Days within which a look that was set by hand is to fall. */
const BY_HAND_SPAN = 7;

/**
 * At most one re-check for each foot, the one due first: two reasons are seen to in one look.
 * @param {string} day  the day of the trim in the business's zone
 * @param {{foot, claw, kind, put_on}[]} [standing]  blocks put on at an earlier visit and still on
 * @returns {{foot: string, cause: string, what: string, due_from: string, due_until: string}[]}
 */
export function rechecksFor(entry, papers, day, standing = []) {
  return entry.feet.flatMap((foot) => {
    const leftOn = standing.filter((block) => isLeftOn(block, foot));
    const stillDue = leftOn.map((block) => stillOn(block, papers, day));
    const found = mostPressing([...byHand(foot, day, reasons(foot, entry, papers, day)), ...stillDue]);
    return found ? [found] : [];
  });
}

/* The rule's reasons under the trimmer's own days. "No need" (0) does not let a block out of sight. */
function byHand(foot, day, found) {
  const days = foot.look_again_days;
  if (days === null) return found;
  if (days === 0) return found.filter((due) => due.cause === "block");
  const { cause, what } = mostPressing(found) ?? { cause: "by_hand", what: "to be looked at again" };
  const [from, until] = [days, days + BY_HAND_SPAN].map((wait) => daysAfter(day, wait));
  return [{ foot: foot.foot, cause, what, due_from: from, due_until: until }];
}

function isLeftOn(block, foot) {
  const changes = (action) => ["block_off", "block"].includes(action.kind) && ["", block.claw].includes(action.claw);
  return block.foot === foot.foot && !foot.actions.some(changes);
}

function stillOn(block, papers, day) {
  const [from, until] = papers.figures.rechecks.block[block.kind];
  const notBefore = (due) => (due > day ? due : day);
  return {
    foot: block.foot,
    cause: "block",
    what: blockWords(papers, block.kind, block.claw),
    due_from: notBefore(daysAfter(block.put_on, from)),
    due_until: notBefore(daysAfter(block.put_on, until)),
  };
}

function reasons(foot, entry, papers, day) {
  const figures = papers.figures.rechecks;
  const due = (cause, what, [from, until]) => (
    { foot: foot.foot, cause, what, due_from: daysAfter(day, from), due_until: daysAfter(day, until) }
  );
  const found = blocksOn(foot).filter((block) => block.block_kind)
    .map((block) => due("block", blockWords(papers, block.block_kind, block.claw), figures.block[block.block_kind]));
  for (const finding of foot.findings) {
    const again = lesionDays(finding, papers);
    if (again) found.push(due("lesion", lesionOf(papers, finding.lesion).name, again));
  }
  const isOnlyTrimmed = !found.length && foot.actions.length && (foot.findings.length || foot.has_pain);
  if (isOnlyTrimmed && isLame(entry, papers)) {
    found.push(due("lame_trim", "lame, trimmed only: score again", figures.lame_trim));
  }
  return found;
}

/* Dermatitis without a live sore has nothing to look at again. */
function lesionDays(finding, papers) {
  if (finding.dd_stage && !isActiveStage(papers, finding.dd_stage)) return null;
  const days = papers.figures.rechecks.lesion;
  return days[finding.lesion] ?? days[familyOf(papers, finding.lesion)] ?? null;
}

function blockWords(papers, kind, claw) {
  return `${papers.labels.blocks[kind]} on ${claw ? papers.labels.claws[claw] : "foot"}`;
}

function mostPressing(found) {
  if (!found.length) return null;
  const key = (due) => `${due.due_until} ${due.due_from}`;
  const first = found.reduce((best, due) => (key(due) < key(best) ? due : best));
  return { ...first, what: [...new Set(found.map((due) => due.what))].join("; ") };
}
