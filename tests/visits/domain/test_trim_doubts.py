import pytest

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.trim_doubts import TrimFigures, doubts

LAT, MED, SKIN = Claw.LATERAL, Claw.MEDIAL, Claw.SKIN
USUAL = TrimFigures()
ULCER = FindingEntry(LesionCode.SU, LAT, 4, 2)
LOOSE = ActionEntry(ActionKind.LOOSE_HORN, LAT)
STEPS = tuple(ActionEntry(kind, LAT) for kind in (ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL))


def _rules(foot, figures=USUAL, **cow):
    return [doubt.rule for doubt in doubts(CowEntry((foot,), **cow), figures)]


def _foot(**said):
    return FootEntry(Foot.LEFT_HIND, **said)


def test_an_ordinary_trim_raises_no_question():
    assert _rules(_foot(wall_mm=82, toe_angle=50, actions=STEPS)) == []


@pytest.mark.parametrize(("wall", "asked"), [(74, True), (75, False), (90, False), (None, False)])
def test_a_wall_shorter_than_the_mark_of_the_business_is_asked_about(wall, asked):
    """T2 is a setting with its landmark: sources say 75 and 90 mm (trade-facts D1)."""
    assert ("T2" in _rules(_foot(wall_mm=wall))) is asked


def test_another_business_may_hold_to_90_mm():
    assert _rules(_foot(wall_mm=85), TrimFigures(shortest_wall_mm=90)) == ["T2"]


def test_a_wall_measured_from_another_landmark_is_not_compared():
    """trade-facts D2."""
    (doubt,) = doubts(CowEntry((_foot(wall_mm=90, wall_measured_from="the coronet"),)), USUAL)
    assert (doubt.rule, "no match" in doubt.text) == ("T2", True)


@pytest.mark.parametrize(("angle", "asked"), [(44, True), (45, False), (50, False), (55, False), (56, True)])
def test_a_toe_angle_far_from_fifty_is_asked_about(angle, asked):
    """T3: about 50 degrees (Archer 2015); the band is common practice."""
    assert ("T3" in _rules(_foot(toe_angle=angle))) is asked


@pytest.mark.parametrize(
    ("actions", "asked"),
    [
        ((LOOSE,), True),
        ((LOOSE, ActionEntry(ActionKind.RELIEF, LAT)), False),
        ((LOOSE, ActionEntry(ActionKind.RELIEF, MED)), True),
        ((LOOSE, ActionEntry(ActionKind.BLOCK, MED, BlockKind.WOOD)), False),
    ],
)
def test_a_sore_claw_without_relief_or_a_block_beside_it_is_asked_about(actions, asked):
    """T7: common practice, no source."""
    assert ("T7" in _rules(_foot(findings=(ULCER,), actions=actions))) is asked


def test_loose_horn_left_on_a_horn_lesion_is_asked_about():
    """T9: common practice, no source."""
    relief = ActionEntry(ActionKind.RELIEF, LAT)
    assert _rules(_foot(findings=(ULCER,), actions=(relief,))) == ["T9"]
    assert _rules(_foot(findings=(ULCER,), actions=(relief, LOOSE))) == []


def test_a_short_claw_that_was_cut_all_the_same_is_asked_about():
    """T10: over-trimming is a fault (common practice, no source)."""
    assert _rules(_foot(wall_mm=75, actions=STEPS)) == ["T10"]
    assert _rules(_foot(wall_mm=76, actions=STEPS)) == []


@pytest.mark.parametrize(("minutes", "asked"), [(None, False), (15, False), (16, True)])
def test_a_belly_band_left_on_long_is_asked_about(minutes, asked):
    """T13: no limit is published, the mark is a setting."""
    assert ("T13" in _rules(_foot(), belly_band_minutes=minutes)) is asked


def test_a_lame_cow_with_nothing_seen_is_asked_about():
    lame = {"mobility_scale": MobilityScale.UK, "mobility_score": 2}
    assert _rules(_foot(), **lame) == ["T15"]
    assert _rules(_foot(has_pain=True), **lame) == []
    assert _rules(_foot(), mobility_scale=MobilityScale.UK, mobility_score=1) == []


def test_a_lesion_in_an_unusual_place_is_asked_about_and_kept():
    (doubt,) = doubts(
        CowEntry((_foot(findings=(FindingEntry(LesionCode.SH, LAT, 1),), actions=(LOOSE,)),)), USUAL
    )
    assert doubt.rule == "zone"
    assert "usual is 4, 5, 6" in doubt.text


def test_dermatitis_without_a_stage_is_asked_about():
    assert _rules(_foot(findings=(FindingEntry(LesionCode.DD, SKIN, 10),))) == ["stage"]
    assert _rules(_foot(findings=(FindingEntry(LesionCode.DD, SKIN, 10, 2, DDStage.M2),))) == []
