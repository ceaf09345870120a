import pytest

from tests.visits.domain.planning.audit.one_run import MealRule, a_run, a_week, clock, job, shift
from visits.domain.planning.audit.check_meal import check_meal, keeps_meal

MEAL = MealRule(clock(0.5), clock(11), clock(12))


def week():
    return a_week(job("a"), job("b"), job("c"), on=shift(meal=MEAL))


@pytest.mark.parametrize(
    ("stops", "leave", "back", "kept"),
    [
        ([("a", 11), ("b", 12.5)], 10, 14, False),  # the drive fills 12:00 to 12:30
        ([("a", 10), ("b", 12)], 9, 14, True),
        ([("a", 11), ("b", 13)], 10, 14, True),
        ([("a", 12)], 11.5, 14, True),
        ([("a", 11.9)], 11.4, 14, False),
        ([("a", 10)], 9, 11.5, True),
        ([("a", 9)], 8, 11, True),
        ([("a", 12.6)], 12, 14, True),
    ],
)
def test_a_gap_is_found_wherever_it_lies(stops, leave, back, kept):
    far = a_week(job("a"), job("b", "high"), on=shift(meal=MEAL))
    assert keeps_meal(a_run(far, *stops, leave=leave, back=back)) is kept


def test_a_gap_outside_the_shift_does_not_count():
    late = a_week(job("a"), on=shift(meal=MEAL, start=clock(11.5)))
    assert not keeps_meal(a_run(late, ("a", 12), leave=11.5, back=14))


def test_a_printed_meal_must_be_free_of_drives():
    run = a_run(week(), ("a", 12.25), leave=8, back=16, meal=11.5)
    assert list(check_meal(run)) == ["meal: somebody drives or works during it, or it lies outside the shift"]
