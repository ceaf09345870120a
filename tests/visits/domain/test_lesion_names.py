import pytest

from visits.domain.lesion_names import (
    UnknownLesion,
    UnknownStage,
    dd_stage,
    family_of,
    group_of,
    is_always_painful,
    lesion_code,
)
from visits.domain.lesions import DDStage, LesionCode, LesionGroup


@pytest.mark.parametrize(
    ("written", "code"),
    [
        ("SU", "SU"),
        (" wla ", "WLA"),
        ("H", "SH"),
        ("T", "TU"),
        ("V", "HFV"),
        ("E", "HHE"),
        ("D", "DD"),
        ("F", "IP"),
    ],
)
def test_a_code_is_read_in_either_writing(written, code):
    assert lesion_code(written) is LesionCode(code)


def test_the_letter_u_is_the_sole_ulcer_only_where_one_letter_codes_are_used():
    assert lesion_code("U") is LesionCode.U
    assert lesion_code("U", ilc_letters=True) is LesionCode.SU


@pytest.mark.parametrize("written", ["", "XX", "SUU", "7"])
def test_a_code_nobody_knows_is_refused(written):
    with pytest.raises(UnknownLesion):
        lesion_code(written)


@pytest.mark.parametrize(
    ("written", "stage"),
    [("m2", "M2"), ("M4.1", "M4.1"), ("M4,1", "M4.1"), ("m41", "M4.1"), ("M5", "M0")],
)
def test_a_stage_is_read_also_as_older_papers_write_it(written, stage):
    assert dd_stage(written) is DDStage(stage)


def test_a_stage_nobody_knows_is_refused():
    with pytest.raises(UnknownStage):
        dd_stage("M6")


@pytest.mark.parametrize(("code", "family"), [("WLA", "WL"), ("SU", "U"), ("DD", "DD"), ("TN", "TN")])
def test_a_lesion_belongs_to_a_family(code, family):
    assert family_of(LesionCode(code)) is LesionCode(family)


def test_a_lesion_belongs_to_a_group():
    assert group_of(LesionCode.SU) is LesionGroup.CLAW_HORN
    assert group_of(LesionCode.HHE) is LesionGroup.INFECTIOUS


@pytest.mark.parametrize(
    ("code", "stage", "sensitive", "painful"),
    [
        ("SU", None, False, True),
        ("WLA", None, False, True),
        ("WLF", None, False, False),
        ("IP", None, False, True),
        ("DD", DDStage.M2, False, True),
        ("DD", DDStage.M4, False, False),
        ("DD", None, False, False),
        ("HFV", None, False, False),
        ("HFV", None, True, True),
        ("SH", None, False, False),
    ],
)
def test_some_lesions_hurt_by_their_nature(code, stage, sensitive, painful):
    """Members from memory (trade-facts 1.2)."""
    assert is_always_painful(LesionCode(code), stage, sensitive) is painful
