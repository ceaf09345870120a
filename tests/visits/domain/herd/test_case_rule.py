import pytest

from visits.domain.herd.case_rule import LASTING, CaseRule
from visits.domain.lesions import LesionCode


@pytest.mark.parametrize(
    ("lesion", "days"),
    [
        (LesionCode.U, 150),
        (LesionCode.WLA, 150),
        (LesionCode.SW, 150),
        (LesionCode.DD, 210),
        (LesionCode.HHE, 210),
        (LesionCode.IH, 210),
        (LesionCode.CC, 210),
        (LesionCode.IP, 28),
    ],
)
def test_foul_is_over_soonest_and_what_lasts_by_nature_last(lesion, days):
    assert CaseRule().gap_of(lesion) == days


def test_the_gap_of_the_horn_is_above_the_published_time_to_a_chronic_lesions_return():
    """Mean 93 days, Britten 2025 (excerpt opened; trade-facts 3.5)."""
    assert CaseRule().gap_days > 93


def test_what_lasts_goes_on_from_one_half_yearly_round_to_the_next():
    assert {LesionCode.DD, LesionCode.HHE, LesionCode.AC} <= LASTING
    assert CaseRule().lasting_gap_days >= 183 + 14


def test_a_business_moves_the_days():
    rule = CaseRule(gap_days=60, lasting_gap_days=90, foul_gap_days=14)
    assert [rule.gap_of(code) for code in (LesionCode.SU, LesionCode.DD, LesionCode.IP)] == [60, 90, 14]
