/* Questions worth asking before a cow is let go: they ask "sure?", they never stand in the way.
   Twin of visits/domain/trim_doubts.py: the same questions in the same order and the same words. */

import { CLAWS, did } from "./entry.js";
import { CORRECTIVE_STEPS, FUNCTIONAL_STEPS, capital, isLame, soundPartner } from "./rules_feet.js";
import { isOfTheHorn, isZone, lesionOf } from "./rules_lesions.js";
import { soreClaws } from "./rules_trim.js";

/**
 * What to ask; empty when nothing looks odd.
 * @returns {{rule: string, foot: string|null, text: string}[]}
 */
export function doubts(entry, papers) {
  const figures = papers.figures.trim;
  const ofFoot = (foot) => [
    ...measureDoubts(foot, figures),
    ...placeDoubts(foot, papers),
    ...reliefDoubts(foot, papers, figures),
  ];
  return [...cowDoubts(entry, papers, figures), ...entry.feet.flatMap(ofFoot)];
}

function* cowDoubts(entry, papers, figures) {
  const minutes = entry.belly_band_minutes;
  if (minutes !== null && minutes > figures.belly_band_minutes) {
    yield doubt("T13", null, `The belly band was on for ${minutes} min: off as soon as it can be.`);
  }
  if (isLame(entry, papers) && !entry.feet.some((foot) => foot.findings.length || foot.has_pain)) {
    yield doubt("T15", null, "She walked in lame and nothing was seen on the feet: all four looked at?");
  }
}

function* measureDoubts(foot, figures) {
  const landmark = foot.wall_measured_from || figures.wall_measured_from;
  const [wall, angle] = [foot.wall_mm, foot.toe_angle];
  if (wall !== null && landmark !== figures.wall_measured_from) {
    yield doubt("T2", foot.foot, `Wall from ${landmark}; your mark is from ${figures.wall_measured_from}: no match.`);
  } else if (wall !== null && wall < figures.shortest_wall_mm) {
    const mark = `your mark is ${figures.shortest_wall_mm} mm from ${landmark}.`;
    yield doubt("T2", foot.foot, `Front wall ${wall} mm, ${mark}`);
  }
  if (angle !== null && (angle < figures.toe_angle_from || angle > figures.toe_angle_to)) {
    yield doubt("T3", foot.foot, `Toe angle ${angle}°, usual is about 50°.`);
  }
}

function* placeDoubts(foot, papers) {
  for (const finding of foot.findings) {
    const { name, zones } = lesionOf(papers, finding.lesion);
    const isOnMap = finding.zone !== null && isZone(papers, finding.zone);
    if (isOnMap && zones.length && !zones.includes(finding.zone)) {
      const usual = [...zones].sort((one, other) => one - other).join(", ");
      yield doubt("zone", foot.foot, `${capital(name)} in zone ${finding.zone}: usual is ${usual}.`);
    }
    if (finding.lesion === "DD" && !finding.dd_stage) {
      yield doubt("stage", foot.foot, "Digital dermatitis: which stage, M0 to M4.1?");
    }
  }
}

function* reliefDoubts(foot, papers, figures) {
  const named = papers.labels.claws;
  for (const claw of soreClaws(foot, papers)) {
    if (!did(foot, "relief", claw) && !did(foot, "block", soundPartner(claw))) {
      yield doubt("T7", foot.foot, `The sore ${named[claw]} has neither relief nor a block beside it.`);
    }
  }
  for (const claw of CLAWS) {
    const hasHornLesion = foot.findings.some((seen) => seen.claw === claw && isOfTheHorn(papers, seen.lesion));
    if (hasHornLesion && !did(foot, "loose_horn", claw)) {
      yield doubt("T9", foot.foot, `Loose horn off the ${named[claw]}?`);
    }
  }
  if (wasCutThoughShort(foot, figures)) {
    yield doubt("T10", foot.foot, "The wall was short already, and it was cut: did each claw need it?");
  }
}

function wasCutThoughShort(foot, figures) {
  const isShort = foot.wall_mm !== null && foot.wall_mm <= figures.shortest_wall_mm;
  const hasDone = (kind) => did(foot, kind);
  return isShort && FUNCTIONAL_STEPS.every(hasDone) && !CORRECTIVE_STEPS.some(hasDone);
}

const doubt = (rule, foot, text) => ({ rule, foot, text });
