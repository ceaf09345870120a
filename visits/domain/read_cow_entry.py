"""One cow as a phone sends her, read into a `CowEntry`; every fault with the field that it stands in."""

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import SIGNS, ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot, ZoneMap
from visits.domain.json_fields import FieldFault, JsonFields
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale

MOST_ON_A_FOOT = 40
NOTE_LENGTH, FOR_VET_LENGTH, LANDMARK_LENGTH = 300, 200, 40


def read_cow_entry(value: object, path: str, faults: list[FieldFault]) -> CowEntry:
    """The entry in `value`; what is wrong with its shape goes to `faults`. A missing key stands for its empty value.

    Whether the entry contradicts itself is for `refusals` to say.
    """
    read = JsonFields(value, path, faults)
    entry = CowEntry(
        feet=tuple(_foot(item, where, faults) for where, item in read.items("feet", 8)),
        mobility_scale=read.code("mobility_scale", MobilityScale),
        mobility_score=read.whole("mobility_score", 0, 9),
        belly_band_minutes=read.whole("belly_band_minutes", 0, 600),
        crush_seconds=read.whole("crush_seconds", 0, 86_400),
        note=read.text("note", NOTE_LENGTH),
        for_vet=read.text("for_vet", FOR_VET_LENGTH),
    )
    read.close()
    return entry


def _foot(value: object, path: str, faults: list[FieldFault]) -> FootEntry:
    read = JsonFields(value, path, faults)
    findings = read.items("findings", MOST_ON_A_FOOT)
    actions = read.items("actions", MOST_ON_A_FOOT)
    foot = FootEntry(
        foot=read.needed_code("foot", Foot, Foot.LEFT_HIND),
        wall_mm=read.whole("wall_mm", 0, 500),
        wall_measured_from=read.text("wall_measured_from", LANDMARK_LENGTH),
        toe_angle=read.whole("toe_angle", 0, 180),
        look_again_days=read.whole("look_again_days", 0, 365),
        for_vet=read.text("for_vet", FOR_VET_LENGTH),
        findings=tuple(_finding(item, where, faults) for where, item in findings),
        actions=tuple(_action(item, where, faults) for where, item in actions),
        **{sign: read.flag(sign) for sign in SIGNS},
    )
    read.close()
    return foot


def _finding(value: object, path: str, faults: list[FieldFault]) -> FindingEntry:
    read = JsonFields(value, path, faults)
    read.code("zone_map", ZoneMap)
    severity = read.whole("severity", 1, 3)
    finding = FindingEntry(
        lesion=read.needed_code("lesion", LesionCode, LesionCode.SU),
        claw=read.needed_code("claw", Claw, Claw.LATERAL),
        zone=read.whole("zone", 0, 12),
        severity=1 if severity is None else severity,
        dd_stage=read.code("dd_stage", DDStage),
    )
    read.close()
    return finding


def _action(value: object, path: str, faults: list[FieldFault]) -> ActionEntry:
    read = JsonFields(value, path, faults)
    action = ActionEntry(
        kind=read.needed_code("kind", ActionKind, ActionKind.NO_CUT),
        claw=read.code("claw", Claw),
        block_kind=read.code("block_kind", BlockKind),
    )
    read.close()
    return action
