/* Feet, claws and scores: the order of the work and what each is called. */

export const FUNCTIONAL_STEPS = ["length", "balance", "model"];
/** What takes horn away; "no cut needed" and one of these drive each other out. */
export const CUTS = [...FUNCTIONAL_STEPS, "relief", "loose_horn"];
export const CORRECTIVE_STEPS = ["relief", "loose_horn", "block"];

/** The other claw of the same foot; null for the skin. */
export function soundPartner(claw) {
  if (claw === "lateral") return "medial";
  return claw === "medial" ? "lateral" : null;
}

/** Both claws in the order they are cut (T1): hind inner first, fore outer first, then the partner matched to it. */
export const clawsInOrder = (foot) => (foot.endsWith("H") ? ["medial", "lateral"] : ["lateral", "medial"]);

/** The blocks put on this foot. */
export const blocksOn = (foot) => foot.actions.filter((action) => action.kind === "block");

/** The score sheet of the entry, as the papers give it; undefined without one. */
export const scaleOf = (entry, papers) => papers.scales.find((scale) => scale.id === entry.mobility_scale);

/** Whether she walked in with a score called lame on its own sheet; a cow not scored is not. */
export const isLame = (entry, papers) => reaches(entry, papers, "lame_from");

/** Whether her score wants attention the same day. */
export const isVeryLame = (entry, papers) => reaches(entry, papers, "very_lame_from");

function reaches(entry, papers, mark) {
  const scale = scaleOf(entry, papers);
  return Boolean(scale) && entry.mobility_score !== null && entry.mobility_score >= scale[mark];
}

/** First letter large, the others small. */
export const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1).toLowerCase();
