import pytest

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.trim_refusals import refusals, sore_claws

LAT, MED, SKIN = Claw.LATERAL, Claw.MEDIAL, Claw.SKIN
ULCER = FindingEntry(LesionCode.SU, LAT, 4, 2)


def _cow(findings=(), actions=()):
    return CowEntry((FootEntry(Foot.LEFT_HIND, findings=tuple(findings), actions=tuple(actions)),))


def _block(claw, kind=BlockKind.WOOD):
    return ActionEntry(ActionKind.BLOCK, claw, kind)


def _said(entry):
    return [(fault.rule, fault.text) for fault in refusals(entry)]


def test_a_block_on_the_sound_claw_beside_the_sore_one_is_kept():
    assert refusals(_cow([ULCER], [_block(MED)])) == []


def test_a_block_on_the_sore_claw_is_refused_with_the_reason():
    """T8: common practice, no source."""
    ((rule, text),) = _said(_cow([ULCER], [_block(LAT)]))
    assert rule == "T8"
    assert "on the sore outer claw" in text
    assert "sound claw beside it" in text


@pytest.mark.parametrize(
    ("finding", "sore"),
    [
        (FindingEntry(LesionCode.SU, LAT, 4, 1), {LAT}),
        (FindingEntry(LesionCode.WLA, MED, 3, 1), {MED}),
        (FindingEntry(LesionCode.SH, LAT, 5, 1), set()),
        (FindingEntry(LesionCode.SH, LAT, 5, 2), {LAT}),
        (FindingEntry(LesionCode.DD, SKIN, 10, 3, DDStage.M2), set()),
        (FindingEntry(LesionCode.CC, LAT, None, 3), set()),
    ],
)
def test_a_claw_is_sore_when_the_horn_lesion_on_it_hurts(finding, sore):
    assert sore_claws(FootEntry(Foot.LEFT_HIND, findings=(finding,))) == sore


def test_the_other_foot_may_carry_its_own_block():
    other = FootEntry(Foot.RIGHT_HIND, actions=(_block(LAT),))
    entry = CowEntry((FootEntry(Foot.LEFT_HIND, findings=(ULCER,)), other))
    assert refusals(entry) == []


@pytest.mark.parametrize(
    ("entry", "rule", "words"),
    [
        (_cow([], [_block(SKIN)]), "T8", "say outer or inner"),
        (_cow([], [_block(None)]), "T8", "say outer or inner"),
        (_cow([], [_block(MED, None)]), "block-kind", "Say which block"),
        (_cow([], [_block(MED), _block(LAT)]), "T8", "Both claws"),
        (_cow([], [ActionEntry(ActionKind.WRAP, None, BlockKind.EVA)]), "block-kind", "belongs to a block"),
        (_cow([FindingEntry(LesionCode.SU, LAT, 13)]), "zone", "zones 0 to 12, not 13"),
        (_cow([FindingEntry(LesionCode.SU, LAT, 4, 4)]), "severity", "from 1 to 3, not 4"),
        (_cow([FindingEntry(LesionCode.SU, LAT, 4, 0)]), "severity", "from 1 to 3, not 0"),
        (_cow([FindingEntry(LesionCode.SU, LAT, 4, 2, DDStage.M2)]), "stage", "sole ulcer has none"),
        (_cow([FindingEntry(LesionCode.DD, LAT, 10)]), "place", "noted on the skin"),
        (_cow([FindingEntry(LesionCode.SU, SKIN, 4)]), "place", "the outer or inner claw"),
        (CowEntry((FootEntry(Foot.LEFT_HIND), FootEntry(Foot.LEFT_HIND))), "foot-twice", "twice"),
        (CowEntry(mobility_score=2), "mobility", "needs its scale"),
        (CowEntry(mobility_scale=MobilityScale.UK), "mobility", "needs its scale"),
        (CowEntry(mobility_scale=MobilityScale.UK, mobility_score=5), "mobility", "0 to 3, not 5"),
    ],
)
def test_what_contradicts_itself_is_refused_with_what_to_mend(entry, rule, words):
    ((found, text),) = _said(entry)
    assert found == rule
    assert words in text


@pytest.mark.parametrize(
    ("cut_claw", "spared", "refused"),
    [(LAT, LAT, True), (LAT, MED, False), (LAT, None, True), (None, MED, True)],
)
def test_a_claw_is_either_cut_or_needed_no_cut(cut_claw, spared, refused):
    """T10: "no cut needed" is a normal thing to put down (common practice, no source)."""
    entry = _cow([], [ActionEntry(ActionKind.LENGTH, cut_claw), ActionEntry(ActionKind.NO_CUT, spared)])
    assert bool(refusals(entry)) is refused


def test_an_empty_cow_that_was_only_looked_at_is_kept():
    assert refusals(CowEntry()) == []


def _fields(entry):
    return [fault.field for fault in refusals(entry)]


@pytest.mark.parametrize(
    ("entry", "field"),
    [
        (_cow([ULCER], [_block(LAT)]), "feet[0].actions[0].claw"),
        (_cow([], [_block(MED), _block(LAT)]), "feet[0].actions"),
        (_cow([], [_block(MED, None)]), "feet[0].actions[0].block_kind"),
        (_cow([ULCER, FindingEntry(LesionCode.SU, LAT, 13)]), "feet[0].findings[1].zone"),
        (_cow([FindingEntry(LesionCode.SU, LAT, 4, 4)]), "feet[0].findings[0].severity"),
        (_cow([FindingEntry(LesionCode.SU, LAT, 4, 2, DDStage.M2)]), "feet[0].findings[0].dd_stage"),
        (_cow([FindingEntry(LesionCode.DD, LAT, 10)]), "feet[0].findings[0].claw"),
        (CowEntry((FootEntry(Foot.LEFT_HIND), FootEntry(Foot.LEFT_HIND))), "feet"),
        (CowEntry(mobility_score=2), "mobility_scale"),
        (CowEntry(mobility_scale=MobilityScale.UK), "mobility_score"),
        (CowEntry(mobility_scale=MobilityScale.UK, mobility_score=5), "mobility_score"),
    ],
)
def test_each_refusal_names_the_field_that_is_to_be_mended(entry, field):
    assert _fields(entry) == [field]


def test_the_field_counts_the_feet_too():
    sore = FootEntry(Foot.RIGHT_HIND, findings=(ULCER,), actions=(_block(MED), _block(LAT)))
    assert "feet[1].actions[1].claw" in _fields(CowEntry((FootEntry(Foot.LEFT_HIND), sore)))
