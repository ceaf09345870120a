/* What was put down, in short lines for people. Where the server has a wording (visits/domain/entry_words.py, a cow's
   last trims in the papers), these are its words; tests/browser/test_phone_words.py holds them equal. */

import { FUNCTIONAL_STEPS, scaleOf } from "./rules_feet.js";
import { lesionOf } from "./rules_lesions.js";
import { referrals } from "./rules_referral.js";
import { trimKind } from "./rules_trim.js";
import { clock } from "./when.js";

const KINDS = { functional: "functional trim", corrective: "corrective trim", check: "looked at" };
/* Not told step by step: the kind of trim says it. */
const PLAIN = [...FUNCTIONAL_STEPS, "no_cut"];
const MOST_NAMED = 3;

/** "outer, zone 4: sole ulcer, 2"; on the skin "skin, zone 10: digital dermatitis M2, 3". */
export function findingWords(finding, papers) {
  const zone = finding.zone === null ? "" : `, zone ${finding.zone}`;
  return `${clawWord(finding.claw, papers)}${zone}: ${lesionWords(finding, papers)}, ${finding.severity}`;
}

/** "wooden block on inner claw", "loose horn off, outer claw", "wrapped". */
export function actionWords(action, papers) {
  const { actions, blocks, claws } = papers.labels;
  const claw = claws[action.claw] ?? "";
  if (action.kind !== "block") return claw ? `${actions[action.kind]}, ${claw}` : actions[action.kind];
  return `${blocks[action.block_kind] ?? "block"} on${claw ? ` ${claw}` : ""}`;
}

/** A foot in as few words as will do: "sole ulcer, wooden block on inner claw", "trimmed", "no cut needed". */
export function footWords(foot, papers) {
  const found = foot.findings.map((finding) => lesionWords(finding, papers));
  const more = foot.actions.filter((action) => !PLAIN.includes(action.kind) && !isRelief(action));
  const words = [...new Set([...found, ...more.map((action) => actionWords(action, papers))])];
  return words.length ? words.join(", ") : plainWords(foot);
}

/** What will be kept, for the button that keeps it: "4 feet trimmed, sole ulcer, block, wrap". */
export function savedWords(entry, papers) {
  const feet = entry.feet.length ? feetWords(entry.feet) : ["no foot lifted"];
  const vet = referrals(entry, papers).length ? ["vet"] : [];
  return [...feet, ...lesionsWords(entry, papers), ...keptOnWords(entry), ...vet].join(", ");
}

/** A cow in lines, as her last trims are told in the papers: what was found, what was done, what is the vet's. */
export function entryLines(entry, papers) {
  return [...foundLines(entry, papers), ...doneLines(entry, papers), ...vetLines(entry, papers)];
}

/** All of a cow, as the office's pages tell her: kind of trim and score, then foot by foot, the vet's, the note. */
export function entryWords(entry, papers) {
  const ofFoot = (foot) => {
    const alone = { feet: [foot] };
    const vet = foot.for_vet ? [`${papers.labels.feet[foot.foot]}, for the vet: ${foot.for_vet}`] : [];
    return [...foundLines(alone, papers), ...doneLines(alone, papers), ...vet];
  };
  const vet = entry.for_vet ? [`for the vet: ${entry.for_vet}`] : [];
  return [firstLine(entry, papers), ...entry.feet.flatMap(ofFoot), ...vet, ...(entry.note ? [entry.note] : [])];
}

function firstLine(entry, papers) {
  const feet = entry.feet.map((foot) => papers.labels.feet[foot.foot]).join(", ");
  const kind = KINDS[trimKind(entry)] + (feet ? `: ${feet}` : "");
  const scale = scaleOf(entry, papers);
  if (!scale || entry.mobility_score === null) return kind;
  return `${kind}; walked in ${entry.mobility_score} (${scale.label})`;
}

/** "left hind outer, zone 4: sole ulcer, 2" for each finding. */
export function foundLines(entry, papers) {
  return entry.feet.flatMap(({ foot, findings }) =>
    findings.map((finding) => `${papers.labels.feet[foot]} ${findingWords(finding, papers)}`));
}

/** "left hind inner: wooden block", "left hind: wrapped"; the steps of a plain trim are said by the kind of trim. */
export function doneLines(entry, papers) {
  const { actions, blocks } = papers.labels;
  return entry.feet.flatMap((foot) => foot.actions.filter((action) => !PLAIN.includes(action.kind)).map((action) => {
    const place = [papers.labels.feet[foot.foot], clawWord(action.claw, papers)].filter(Boolean).join(" ");
    return `${place}: ${blocks[action.block_kind] ?? actions[action.kind]}`;
  }));
}

/** "left hind: swelling above the dew claws"; what is the vet's for the whole cow stands without a foot. */
export function vetLines(entry, papers) {
  return referrals(entry, papers).map(({ foot, reason }) => (foot ? `${papers.labels.feet[foot]}: ${reason}` : reason));
}

/** The words as they begin a line; a number such as A12 stays as it is. */
export const withCapital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/** "45 min", "2 h", "2 h 25 min". */
export function durationWords(minutes) {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (!hours) return `${rest} min`;
  return rest ? `${hours} h ${rest} min` : `${hours} h`;
}

/** "6 min a cow"; under two minutes in halves: "1.5 min a cow". */
export function perCowWords(seconds) {
  const minutes = seconds / 60;
  return `${minutes < 2 ? Math.max(0.5, Math.round(minutes * 2) / 2) : Math.round(minutes)} min a cow`;
}

/** "done about 14:20": an estimate, to the nearest five minutes, in the zone of the business. */
export function doneAboutWords(iso, zone) {
  const step = 5 * 60_000;
  return `done about ${clock(new Date(Math.round(Date.parse(iso) / step) * step).toISOString(), zone)}`;
}

const clawWord = (claw, papers) => (papers.labels.claws[claw] ?? "").replace(/ claw$/u, "");

function lesionWords({ lesion, dd_stage: stage }, papers) {
  return `${lesionOf(papers, lesion)?.name ?? lesion}${stage ? ` ${stage}` : ""}`;
}

const isRelief = (action) => ["relief", "loose_horn"].includes(action.kind);
const isTrimmed = (foot) => foot.actions.some((action) => FUNCTIONAL_STEPS.includes(action.kind) || isRelief(action));
const isUncut = (foot) => !isTrimmed(foot) && foot.actions.some((action) => action.kind === "no_cut");

function plainWords(foot) {
  if (isTrimmed(foot)) return "trimmed";
  return isUncut(foot) ? "no cut needed" : "looked at";
}

function feetWords(feet) {
  const uncut = feet.filter(isUncut).length;
  const cut = feet.filter(isTrimmed).length;
  const rest = feet.length - cut - uncut;
  const counted = [[cut, "trimmed"], [uncut, "no cut needed"], [rest, "looked at"]];
  return counted.filter(([count]) => count).map(([count, word]) => `${count} ${count === 1 ? "foot" : "feet"} ${word}`);
}

function lesionsWords(entry, papers) {
  const names = [...new Set(entry.feet.flatMap((foot) => foot.findings.map((found) => lesionWords(found, papers))))];
  return names.length > MOST_NAMED ? [`${names.length} lesions`] : names;
}

function keptOnWords(entry) {
  const named = { block: "block", block_off: "block off", wrap: "wrap", dressing: "dressing" };
  const actions = entry.feet.flatMap((foot) => foot.actions);
  return Object.entries(named).flatMap(([kind, word]) => {
    const count = actions.filter((action) => action.kind === kind).length;
    if (count < 2) return count ? [word] : [];
    return [kind === "block_off" ? `${count} blocks off` : `${count} ${word}s`];
  });
}
