import pytest

from visits.domain.feet import (
    FEET_IN_ORDER,
    SKIN_ZONES,
    WEIGHT_BEARING_ZONES,
    ZONE_NAMES,
    Claw,
    Foot,
    ZoneMap,
    claws_in_order,
    is_zone,
    reference_claw,
    sound_partner,
    zone_name,
)


@pytest.mark.parametrize(
    ("foot", "label", "opposite"),
    [
        ("LF", "left fore", "RF"),
        ("RF", "right fore", "LF"),
        ("LH", "left hind", "RH"),
        ("RH", "right hind", "LH"),
    ],
)
def test_feet_go_by_their_trade_words_and_have_an_opposite(foot, label, opposite):
    assert Foot(foot).label == label
    assert Foot(foot).opposite is Foot(opposite)


@pytest.mark.parametrize(
    ("claw", "label"), [("lateral", "outer claw"), ("medial", "inner claw"), ("skin", "skin")]
)
def test_claws_go_by_their_trade_words(claw, label):
    assert Claw(claw).label == label


@pytest.mark.parametrize(
    ("foot", "first"),
    [("LH", Claw.MEDIAL), ("RH", Claw.MEDIAL), ("LF", Claw.LATERAL), ("RF", Claw.LATERAL)],
)
def test_the_cut_starts_on_the_inner_claw_behind_and_on_the_outer_claw_in_front(foot, first):
    """T1: common practice, no source."""
    assert reference_claw(Foot(foot)) is first
    assert claws_in_order(Foot(foot)) == (first, sound_partner(first))


def test_a_claw_has_a_partner_and_the_skin_has_none():
    assert sound_partner(Claw.LATERAL) is Claw.MEDIAL
    assert sound_partner(Claw.MEDIAL) is Claw.LATERAL
    assert sound_partner(Claw.SKIN) is None


def test_the_map_has_zones_0_to_12_each_with_words():
    """ILC map: labels run 0 to 12, thirteen places (trade-facts 1.4)."""
    assert [number for number in range(-2, 20) if is_zone(number)] == list(range(13))
    assert len(set(ZONE_NAMES.values())) == 13
    assert zone_name(4) == "where sole meets heel"


def test_skin_and_weight_bearing_zones_are_those_of_the_map():
    assert {1, 2, 3, 4, 5, 6} == WEIGHT_BEARING_ZONES
    assert {0, 9, 10} == SKIN_ZONES


def test_every_foot_is_lifted_once_hind_feet_first():
    assert sorted(FEET_IN_ORDER) == sorted(Foot)
    assert all(foot.is_hind for foot in FEET_IN_ORDER[:2])


def test_a_zone_map_says_which_drawing_it_is():
    assert "Lameness" in ZoneMap.ILC.label
