"""A small herd to send out, with one of everything that is hard to map."""

from datetime import UTC, date, datetime

from farms.domain.cow_status import CowStatus
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.ade.herd_out import CalvingOut, CowOut, FarmOut, HerdOut, ScoreOut, TrimOut
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale

FARM = FarmOut(7, "Low Croft")
AT = datetime(2026, 3, 2, 10, 41, tzinfo=UTC)
LATER = datetime(2026, 3, 2, 12, tzinfo=UTC)
DAISY = CowOut(
    416,
    "416",
    CowStatus.MILKING,
    tag="UK123450600001",
    electronic_id="826123450600001",
    born_on=date(2021, 7, 1),
    calvings=(CalvingOut(1, date(2023, 9, 1), 1), CalvingOut(2, date(2024, 9, 9))),
)
BARE = CowOut(417, "9", CowStatus.DRY)
ULCER = FindingEntry(LesionCode.SU, Claw.LATERAL, zone=4, severity=2)
DERMATITIS = FindingEntry(LesionCode.DD, Claw.LATERAL, zone=10, severity=1, dd_stage=DDStage.M2)
BLOCKED = FootEntry(
    Foot.RIGHT_HIND,
    findings=(ULCER, DERMATITIS),
    actions=(
        ActionEntry(ActionKind.LENGTH, Claw.MEDIAL),
        ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.WOOD),
        ActionEntry(ActionKind.WRAP),
    ),
    look_again_days=28,
)
UNCUT = FootEntry(Foot.LEFT_FORE, actions=(ActionEntry(ActionKind.NO_CUT),))


def trim_of(cow, *feet, key=1, at=AT, **entry):
    return TrimOut(
        key, f"3f0c9e9e-0000-4000-8000-{key:012d}", cow.key, at, CowEntry(feet=tuple(feet), **entry)
    )


def score_of(cow, score, *, key=1, day=date(2026, 2, 27), scale=MobilityScale.UK):
    return ScoreOut(key, cow.key, day, AT, scale, score)


def herd_of(*, cows=(DAISY, BARE), trims=(), scores=()):
    return HerdOut(FARM, tuple(cows), tuple(trims), tuple(scores))
