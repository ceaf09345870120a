import pytest

from visits.domain import cautions

SINGLE = [
    cautions.GRINDER,
    cautions.BELLY_BAND,
    cautions.TOE,
    cautions.BLOOD,
    cautions.MEDICINES,
    cautions.HEALTH,
    cautions.LATE_PREGNANT,
    cautions.GLUE,
    cautions.BLADE_BROKEN,
    cautions.DISC_BROKEN,
]
ALL = [*SINGLE, *cautions.BEFORE_THE_FIRST_COW, *cautions.FOR_THE_FARM]


def test_before_the_first_cow_each_danger_of_the_work_is_named():
    """T14 (common practice), grinder and crush: RISE 2017, HSE."""
    words = " ".join(cautions.BEFORE_THE_FIRST_COW).lower()
    for danger in ("glove", "eyes", "grinder", "knives", "crush", "leg", "where you are"):
        assert danger in words


@pytest.mark.parametrize("text", ALL)
def test_a_caution_is_a_short_sentence(text):
    assert text.endswith(".")
    assert len(text) < 130


@pytest.mark.parametrize("text", [cautions.BLOOD, cautions.MEDICINES, cautions.LATE_PREGNANT])
def test_what_is_the_vets_is_left_to_the_vet(text):
    assert "vet" in text


def test_nothing_here_diagnoses_or_doses():
    words = " ".join(ALL).lower()
    assert "not a diagnosis" in words
    assert not any(unit in words for unit in (" mg", " ml", " g/kg"))
