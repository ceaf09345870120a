/* The empty shapes of what is put down for a cow, and the small changes that a tap makes to them.
 *
 * Every change returns a new value; nothing here knows the screen or the store. Field names are those of the wire
 * (see shapes in DEVELOPERS.md, "The crush page").
 */

import { CUTS, FUNCTIONAL_STEPS } from "./rules_feet.js";

export const FEET = ["LH", "RH", "LF", "RF"];
export const CLAWS = ["lateral", "medial"];
export const SIGNS = [
  "has_pain",
  "has_swelling",
  "swelling_above_dewclaw",
  "has_bad_smell",
  "drew_blood",
  "sensitive_tissue",
  "deep_infection",
  "no_better_at_recheck",
];

/** What is put down for a cow before anything was. */
export function emptyEntry() {
  return {
    mobility_scale: "",
    mobility_score: null,
    belly_band_minutes: null,
    crush_seconds: null,
    note: "",
    for_vet: "",
    feet: [],
  };
}

/** A foot on which nothing was put down; it counts as lifted once it stands in an entry. */
export function emptyFoot(foot) {
  const signs = Object.fromEntries(SIGNS.map((sign) => [sign, false]));
  const measures = { wall_mm: null, wall_measured_from: "", toe_angle: null, look_again_days: null };
  return { foot, ...measures, for_vet: "", ...signs, findings: [], actions: [] };
}

/** The foot of that name in the entry, or an empty one. */
export function footOf(entry, name) {
  return entry.feet.find((foot) => foot.foot === name) ?? emptyFoot(name);
}

/** The entry with that foot in place of its like; feet stay in the order of the work (hind feet first). */
export function withFoot(entry, foot) {
  const rest = entry.feet.filter((each) => each.foot !== foot.foot);
  const feet = [...rest, foot].sort((a, b) => FEET.indexOf(a.foot) - FEET.indexOf(b.foot));
  return { ...entry, feet };
}

/** The entry without that foot: it was not lifted. */
export function withoutFoot(entry, name) {
  return { ...entry, feet: entry.feet.filter((foot) => foot.foot !== name) };
}

/** Whether anything was put down on the foot. */
export function isTouched(foot) {
  return JSON.stringify(foot) !== JSON.stringify(emptyFoot(foot.foot));
}

export function finding(lesion, claw, zone, zoneMap, severity = 1) {
  return { lesion, claw, zone, zone_map: zoneMap, severity, dd_stage: "" };
}

export function action(kind, claw = "", blockKind = "") {
  return { kind, claw, block_kind: blockKind };
}

/** The foot with the same finding at the same place replaced, or the finding added. */
export function withFinding(foot, found) {
  const rest = foot.findings.filter((each) => !isSamePlace(each, found));
  return { ...foot, findings: [...rest, found] };
}

export function withoutFinding(foot, found) {
  return { ...foot, findings: foot.findings.filter((each) => !isSamePlace(each, found)) };
}

function isSamePlace(a, b) {
  return a.lesion === b.lesion && a.claw === b.claw && a.zone === b.zone;
}

/** Whether that was done: to that claw where one is named, to any or the whole foot where it is "". */
export function did(foot, kind, claw = "") {
  return foot.actions.some((each) => each.kind === kind && (claw === "" || each.claw === claw));
}

/** The foot with an action added once; a cut and "no cut needed" on one claw drive each other out. */
export function withAction(foot, wanted) {
  const rest = foot.actions.filter((each) => !isSameAction(each, wanted) && !contradicts(each, wanted));
  return { ...foot, actions: [...rest, wanted] };
}

export function withoutAction(foot, unwanted) {
  return { ...foot, actions: foot.actions.filter((each) => !isSameAction(each, unwanted)) };
}

export function toggledAction(foot, wanted) {
  const stands = foot.actions.some((each) => isSameAction(each, wanted) && each.block_kind === wanted.block_kind);
  return stands ? withoutAction(foot, wanted) : withAction(foot, wanted);
}

function isSameAction(a, b) {
  return a.kind === b.kind && a.claw === b.claw;
}

function contradicts(standing, wanted) {
  const sameClaw = standing.claw === wanted.claw || standing.claw === "" || wanted.claw === "";
  const pair = [standing.kind, wanted.kind];
  if (pair.includes("block") && standing.kind === wanted.kind) return true; // one claw of a foot carries a block
  return sameClaw && pair.includes("no_cut") && pair.some((kind) => CUTS.includes(kind));
}

/** Both claws of the foot cut to length, levelled and modelled; what else was put down stays. */
export function trimmed(foot) {
  const steps = CLAWS.flatMap((claw) => FUNCTIONAL_STEPS.map((kind) => action(kind, claw)));
  return steps.reduce(withAction, foot);
}

/** Both claws looked at and left as they are. */
export function uncut(foot) {
  const rest = foot.actions.filter((each) => !CUTS.includes(each.kind) && each.kind !== "no_cut");
  return { ...foot, actions: [...rest, ...CLAWS.map((claw) => action("no_cut", claw))] };
}

/** Whether both claws of the foot had the three steps. */
export function isTrimmed(foot) {
  return CLAWS.every((claw) => FUNCTIONAL_STEPS.every((kind) => did(foot, kind, claw)));
}

export function isUncut(foot) {
  return CLAWS.every((claw) => did(foot, "no_cut", claw));
}
