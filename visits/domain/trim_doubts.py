"""Questions worth asking before a cow is let go: they ask "sure?", they never stand in the way.

Rules T1 to T15 of the trade (common practice, no source unless named). T1 (order of claws) and T5 (shape of
the model) are how the work is done and shown as help; they leave nothing to check in what is noted.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from visits.domain.actions import CORRECTIVE_STEPS, FUNCTIONAL_STEPS, ActionKind
from visits.domain.crush_entry import CowEntry, FootEntry
from visits.domain.feet import Claw, Foot, is_zone, sound_partner
from visits.domain.lesions import LESIONS, LesionCode, LesionGroup
from visits.domain.mobility import Urgency, urgency_of
from visits.domain.trim_figures import TrimFigures
from visits.domain.trim_refusals import sore_claws

__all__ = ["Doubt", "TrimFigures", "doubts"]


@dataclass(frozen=True)
class Doubt:
    """A question to the trimmer: the rule, the foot and the words."""

    rule: str
    foot: Foot | None
    text: str


def doubts(entry: CowEntry, figures: TrimFigures) -> list[Doubt]:
    """What to ask before the cow goes; empty when nothing looks odd."""
    found = list(_cow_doubts(entry, figures))
    for foot in entry.feet:
        found.extend(_measure_doubts(foot, figures))
        found.extend(_place_doubts(foot))
        found.extend(_relief_doubts(foot, figures))
    return found


def _cow_doubts(entry: CowEntry, figures: TrimFigures) -> Iterator[Doubt]:
    minutes = entry.belly_band_minutes
    if minutes is not None and minutes > figures.belly_band_minutes:
        yield Doubt("T13", None, f"The belly band was on for {minutes} min: off as soon as it can be.")
    if entry.mobility_scale is not None and entry.mobility_score is not None:
        lame = urgency_of(entry.mobility_scale, entry.mobility_score) is not Urgency.NONE
        if lame and not any(foot.findings or foot.has_pain for foot in entry.feet):
            yield Doubt(
                "T15", None, "She walked in lame and nothing was seen on the feet: all four looked at?"
            )


def _measure_doubts(foot: FootEntry, figures: TrimFigures) -> Iterator[Doubt]:
    landmark = foot.wall_measured_from or figures.wall_measured_from
    if foot.wall_mm is not None and landmark != figures.wall_measured_from:
        yield Doubt(
            "T2",
            foot.foot,
            f"Wall from {landmark}; your mark is from {figures.wall_measured_from}: no match.",
        )
    elif foot.wall_mm is not None and foot.wall_mm < figures.shortest_wall_mm:
        yield Doubt(
            "T2",
            foot.foot,
            f"Front wall {foot.wall_mm} mm, your mark is {figures.shortest_wall_mm} mm from {landmark}.",
        )
    angle = foot.toe_angle
    if angle is not None and not figures.toe_angle_from <= angle <= figures.toe_angle_to:
        yield Doubt("T3", foot.foot, f"Toe angle {angle}°, usual is about 50°.")


def _place_doubts(foot: FootEntry) -> Iterator[Doubt]:
    for finding in foot.findings:
        usual = LESIONS[finding.lesion].zones
        if finding.zone is not None and is_zone(finding.zone) and usual and finding.zone not in usual:
            places = ", ".join(str(zone) for zone in sorted(usual))
            name = finding.lesion.label
            yield Doubt("zone", foot.foot, f"{name.capitalize()} in zone {finding.zone}: usual is {places}.")
        if finding.lesion is LesionCode.DD and finding.dd_stage is None:
            yield Doubt("stage", foot.foot, "Digital dermatitis: which stage, M0 to M4.1?")


def _relief_doubts(foot: FootEntry, figures: TrimFigures) -> Iterator[Doubt]:
    for claw in sorted(sore_claws(foot)):
        partner = sound_partner(claw)
        if not (foot.did(ActionKind.RELIEF, claw) or foot.did(ActionKind.BLOCK, partner)):
            yield Doubt("T7", foot.foot, f"The sore {claw.label} has neither relief nor a block beside it.")
    horn = {f.claw for f in foot.findings if LESIONS[f.lesion].group is LesionGroup.CLAW_HORN}
    for claw in sorted(horn - {Claw.SKIN}):
        if not foot.did(ActionKind.LOOSE_HORN, claw):
            yield Doubt("T9", foot.foot, f"Loose horn off the {claw.label}?")
    if _cut_though_short(foot, figures):
        yield Doubt("T10", foot.foot, "The wall was short already, and it was cut: did each claw need it?")


def _cut_though_short(foot: FootEntry, figures: TrimFigures) -> bool:
    short = foot.wall_mm is not None and foot.wall_mm <= figures.shortest_wall_mm
    kinds = {action.kind for action in foot.actions}
    return short and kinds >= FUNCTIONAL_STEPS and not kinds & CORRECTIVE_STEPS
