/* What is the vet's, by rule and in the trimmer's own words. It says what was seen, never what it is.
   Twin of visits/domain/referral.py. */

import { isVeryLame } from "./rules_feet.js";
import { isAlwaysPainful } from "./rules_lesions.js";

/**
 * What of this cow is the vet's; empty when nothing is. `foot` null: the whole cow.
 * @returns {{foot: string|null, reason: string}[]}
 */
export function referrals(entry, papers) {
  const found = entry.feet.flatMap((foot) => [...footReasons(foot)].map((reason) => ({ foot: foot.foot, reason })));
  if (entry.for_vet) found.push({ foot: null, reason: entry.for_vet });
  if (isVeryLame(entry, papers) && !entry.feet.some((foot) => explainsLameness(foot, papers))) {
    found.push({ foot: null, reason: "very lame, and nothing seen on the feet explains it" });
  }
  return found;
}

function* footReasons(foot) {
  const saw = (code) => foot.findings.some((finding) => finding.lesion === code);
  if (foot.drew_blood || foot.sensitive_tissue) {
    yield "blood drawn or sensitive tissue open: work on this foot stopped";
  }
  if (foot.swelling_above_dewclaw) yield "swelling above the dew claws";
  if (foot.deep_infection) yield "looks infected deep inside";
  if (saw("TN")) yield "dead toe";
  if (saw("IP")) yield "swollen, smelling foot with sudden lameness";
  if (foot.no_better_at_recheck) yield "no better at the re-check";
  if (foot.for_vet) yield foot.for_vet;
}

function explainsLameness(foot, papers) {
  if (foot.has_pain || foot.has_swelling) return true;
  return foot.findings.some((finding) => finding.severity >= 2 || isAlwaysPainful(papers, finding));
}
