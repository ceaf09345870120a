/* What the list of lesions in the papers says. No table of lesions stands here: codes, places and names come from the
   server. What is named here by its code are the few that a rule of the trade singles out, as in the Python rules. */

const tables = new WeakMap();

/* Families by how often they are seen, most often first: heel horn erosion on 59.2 % of 28,638 cattle (Austria
   2010-19), then dermatitis, white line, sole ulcer, sole bruising of 97,944 lesions (Britten 2025; trade-facts 4). */
const OFTEN_SEEN = ["HHE", "DD", "WL", "U", "SH"];

/** The lesion of that code, as the papers give it; undefined for a code they do not have. */
export function lesionOf(papers, code) {
  let table = tables.get(papers.lesions);
  if (!table) {
    table = new Map(papers.lesions.map((lesion, place) => [lesion.code, { ...lesion, place }]));
    tables.set(papers.lesions, table);
  }
  return table.get(code);
}

/** The code it is a kind of (WLA: WL), or itself. */
export const familyOf = (papers, code) => lesionOf(papers, code)?.parent || code;

/** Whether it is a lesion of the claw horn, which hurts when it is stood on. */
export const isOfTheHorn = (papers, code) => lesionOf(papers, code)?.group === "claw_horn";

/** Whether the stage carries a live sore. */
export function isActiveStage(papers, code) {
  return papers.stages.some((stage) => stage.code === code && stage.active);
}

/** Whether what was found hurts by its nature; a sore of dermatitis at M2. */
export function isAlwaysPainful(papers, finding) {
  if (finding.lesion === "DD") return finding.dd_stage === "M2";
  if (familyOf(papers, finding.lesion) === "HF") return false;
  return Boolean(lesionOf(papers, finding.lesion)?.alarm);
}

/** Whether the map has a place of that number. */
export const isZone = (papers, zone) => Object.hasOwn(papers.zones.names, String(zone));

/**
 * The lesions to offer at a place of the map, in order: those usual there (the often seen first, within a family the
 * one bound closest to the place before what it is a kind of), then those that always hurt, then the rest by group.
 * A place on the skin has lesions of the skin only, one on the horn those of the horn.
 * @param {number|null} zone  null: no place was tapped
 * @param {string} [claw]  "skin" asks for lesions of the skin where no zone was tapped
 * @returns {object[]} lesions as the papers give them
 */
export function lesionsAt(papers, zone, claw = "") {
  const onSkin = claw === "skin" || papers.zones.skin.includes(zone);
  const fitting = papers.lesions.filter((lesion) => lesion.on_skin === onSkin);
  const ranks = new Map(fitting.map((lesion) => [lesion.code, rankAt(papers, zone, lesion)]));
  return fitting.sort((one, other) => compare(ranks.get(one.code), ranks.get(other.code)));
}

function rankAt(papers, zone, lesion) {
  const family = lesion.parent || lesion.code;
  const familyPlace = lesionOf(papers, family).place;
  const { place } = lesionOf(papers, lesion.code);
  const inFamily = [lesion.parent ? 0 : 1, lesion.alarm ? 0 : 1, lesion.zones.length, place];
  if (lesion.zones.includes(zone)) return [0, often(family), familyPlace, ...inFamily];
  if (lesion.alarm) return [1, often(family), familyPlace, ...inFamily];
  return [2, groupPlace(papers, lesion.group), familyPlace, ...inFamily];
}

function often(family) {
  const place = OFTEN_SEEN.indexOf(family);
  return place < 0 ? OFTEN_SEEN.length : place;
}

const groupPlace = (papers, group) => Object.keys(papers.group_labels).indexOf(group);

function compare(one, other) {
  for (let place = 0; place < one.length; place += 1) {
    const apart = one[place] - (other[place] ?? 0);
    if (apart) return apart;
  }
  return 0;
}
