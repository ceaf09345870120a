/* Says in words which field of a writing the server did not take: "Left hind, sole ulcer, zone". */

const FIELDS = {
  mobility_scale: "mobility scale", mobility_score: "mobility score",
  belly_band_minutes: "minutes in the belly band", crush_seconds: "time in the crush",
  note: "note", for_vet: "what is for the vet", told_vet: "which vet was told",
  foot: "foot", feet: "feet", wall_mm: "length of the front wall",
  wall_measured_from: "where the wall was measured from", toe_angle: "toe angle",
  look_again_days: "days to the re-check", findings: "what was found", lesion: "what was found",
  claw: "claw", zone: "zone", zone_map: "map of the zones", severity: "how bad", dd_stage: "stage",
  actions: "what was done", kind: "what was done", block_kind: "kind of block",
  cow: "the cow", id: "the cow", new: "the new cow", number: "number", uid: "her name on this phone",
  substance: "active substance", dilution: "dilution", contact_minutes: "contact time", washed_at: "when",
  in_hand: "in hand", went_dull: "went dull", cracked: "cracked", chipped: "chipped", at: "when",
  consumable: "what was used", litres: "litres", extra: "how much more was used", received_by: "who received it",
  was_done: "what was done", farm_to_do: "what the farm must do", washed_down: "washed down",
  hygiene_note: "note on hygiene", made_at: "when it was noted", content: "all of it", entry: "all of it",
};

/**
 * @param {string} path as the server names it: content.entry.feet[0].findings[1].zone
 * @param {object} content of the writing that was refused
 * @param {object} papers of the visit
 * @returns {string} the place in words, beginning with a capital; empty when the path says nothing
 */
export function faultPlace(path, content, papers) {
  const feet = content?.entry?.feet ?? [];
  const foot = feet[indexAfter(path, "feet")];
  const finding = foot?.findings?.[indexAfter(path, "findings")];
  const action = foot?.actions?.[indexAfter(path, "actions")];
  const words = [
    foot && (papers.labels?.feet?.[foot.foot] ?? foot.foot),
    finding && lesionName(finding.lesion, papers),
    action && (papers.labels?.actions?.[action.kind] ?? action.kind),
    ...bladeWords(path, content, papers),
    fieldName(path),
  ];
  const said = words.filter(Boolean).join(", ");
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/* "Right, red handle", "in hand": which blade of which list. */
function bladeWords(path, content, papers) {
  const part = ["in_hand", "went_dull", "cracked", "chipped"].find((list) => indexAfter(path, list) >= 0);
  if (!part) return [];
  const key = content?.[part]?.[indexAfter(path, part)];
  return [papers.blades?.find((blade) => blade.id === key)?.name ?? "the blade", FIELDS[part]];
}

function indexAfter(path, list) {
  const found = new RegExp(`${list}\\[(\\d+)\\]`).exec(path ?? "");
  return found ? Number(found[1]) : -1;
}

function lesionName(code, papers) {
  return papers.lesions?.find((lesion) => lesion.code === code)?.name ?? code;
}

/** The last name in the path; a row of a list (ending in "]") has said itself already. */
function fieldName(path) {
  const last = (path ?? "").split(".").pop();
  if (/\[\d+\]$/.test(last)) return "";
  return FIELDS[last] ?? last.replaceAll("_", " ");
}
