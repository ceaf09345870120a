"""What is the vet's. The software says what was seen and that the vet be told; it never says what it is.

The line of the trade is horn: sensitive tissue, bone, blood and deep infection are the vet's (trade-facts
8.1; the list is common practice, from memory). What the trimmer leaves to the vet in their own words stands beside
what the rule finds. T11 comes first on every report.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from visits.domain.crush_entry import CowEntry, FootEntry
from visits.domain.feet import Foot
from visits.domain.lesion_names import is_always_painful
from visits.domain.lesions import LesionCode


@dataclass(frozen=True)
class ReferralAdvice:
    """A foot (or the whole cow) that the vet should see, and what was seen."""

    foot: Foot | None
    reason: str


def referrals_for(entry: CowEntry) -> list[ReferralAdvice]:
    """What of this cow is the vet's; empty when nothing is."""
    found = [ReferralAdvice(foot.foot, reason) for foot in entry.feet for reason in _foot_reasons(foot)]
    if entry.for_vet:
        found.append(ReferralAdvice(None, entry.for_vet))
    if _very_lame(entry) and not any(_explains_lameness(foot) for foot in entry.feet):
        found.append(ReferralAdvice(None, "very lame, and nothing seen on the feet explains it"))
    return found


def _foot_reasons(foot: FootEntry) -> Iterator[str]:
    if foot.drew_blood or foot.sensitive_tissue:
        yield "blood drawn or sensitive tissue open: work on this foot stopped"
    if foot.swelling_above_dewclaw:
        yield "swelling above the dew claws"
    if foot.deep_infection:
        yield "looks infected deep inside"
    if any(finding.lesion is LesionCode.TN for finding in foot.findings):
        yield "dead toe"
    if any(finding.lesion is LesionCode.IP for finding in foot.findings):
        yield "swollen, smelling foot with sudden lameness"
    if foot.no_better_at_recheck:
        yield "no better at the re-check"
    if foot.for_vet:
        yield foot.for_vet


def _very_lame(entry: CowEntry) -> bool:
    scale, score = entry.mobility_scale, entry.mobility_score
    return scale is not None and score is not None and score >= scale.very_lame_from


def _explains_lameness(foot: FootEntry) -> bool:
    """Something on the foot that hurts: signs, a lesion painful by its nature, or one worse than slight."""
    if foot.has_pain or foot.has_swelling:
        return True
    return any(
        finding.severity >= 2 or is_always_painful(finding.lesion, finding.dd_stage)
        for finding in foot.findings
    )
