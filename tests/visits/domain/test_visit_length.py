import pytest

from visits.domain.own_figures import FigureRefused
from visits.domain.visit_length import FarmSetup, LengthFigures, expected_length

USUAL = LengthFigures()


def _minutes(setup=None, head=20, corrective=2):
    return expected_length(USUAL, setup or FarmSetup(), head_count=head, corrective_count=corrective).minutes


def test_the_length_is_the_sum_of_its_parts_and_says_them():
    length = expected_length(USUAL, FarmSetup(), head_count=20, corrective_count=2)
    assert length.parts == (
        ("setting up", 25),
        ("18 cows to trim", 126),
        ("2 lame or re-checked", 26),
        ("packing up", 15),
        ("washing down", 15),
    )
    assert length.minutes == 207


@pytest.mark.parametrize(
    ("setup", "more"),
    [
        (FarmSetup(crush_on_site=True), -15),
        (FarmSetup(has_hard_standing=False), 10),
        (FarmSetup(has_water=False), 10),
        (FarmSetup(has_power=False), 5),
        (FarmSetup(has_light=False), 5),
        (FarmSetup(hygiene_level=0), 0),
        (FarmSetup(hygiene_level=2), 15),
        (FarmSetup(hygiene_level=3), 30),
    ],
)
def test_what_the_farm_has_and_how_clean_it_is_changes_the_length(setup, more):
    assert _minutes(setup) - _minutes() == more


def test_a_lame_cow_takes_longer_than_a_sound_one():
    assert _minutes(corrective=3) > _minutes(corrective=2)


def test_a_business_has_its_own_minutes():
    own = LengthFigures.from_overrides({"functional_cow": 9.5})
    length = expected_length(own, FarmSetup(), head_count=3, corrective_count=0)
    assert dict(length.parts)["3 cows to trim"] == 28.5
    assert length.minutes == 84
    with pytest.raises(FigureRefused):
        LengthFigures.from_overrides({"functional": 9})


@pytest.mark.parametrize(("head", "corrective"), [(2, 3), (2, -1), (-1, -1)])
def test_counts_that_cannot_be_are_refused(head, corrective):
    with pytest.raises(ValueError, match="cannot be"):
        _minutes(head=head, corrective=corrective)


def test_minutes_per_cow_lie_between_common_practice_and_what_was_measured():
    """6 min (lone trimmer, hydraulic crush: common practice) to 15.9 + 4.4 min (Pesenhofer 2006, walk-in crush)."""
    assert 6 <= USUAL.functional_cow < USUAL.corrective_cow <= 15.9 + 4.4
