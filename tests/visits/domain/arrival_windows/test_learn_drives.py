from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.arrival_windows.day_ahead import Spread
from visits.domain.arrival_windows.learn_drives import Driven, learn_drives

USUAL = Spread()


def drives(ratio, spread, count=600, seed=2):
    chance = Random(seed)
    return [Driven(20, 20 * ratio * 2.718281828 ** chance.gauss(0, spread)) for _ in range(count)]


def test_without_a_drive_the_usual_spread_stands():
    assert learn_drives(USUAL, [], []) == USUAL


def test_slow_roads_are_learned_and_so_is_how_much_they_differ():
    found = learn_drives(USUAL, drives(1.2, 0.08), [])
    assert found.drive_ratio == pytest.approx(1.2, abs=0.02)
    assert found.drive_spread == pytest.approx(0.08, abs=0.015)


def test_gaps_that_hide_more_than_a_drive_do_not_count():
    talks = [Driven(20, 90)] * 300
    assert learn_drives(USUAL, [*drives(1.0, 0.1), *talks], []) == learn_drives(USUAL, drives(1.0, 0.1), [])


def test_late_mornings_are_learned_without_the_part_of_the_road():
    chance = Random(3)
    late = [(20.0, 10 + chance.gauss(0, 5)) for _ in range(800)]
    found = learn_drives(USUAL, [], late)
    assert found.leave_late == pytest.approx(10, abs=0.5)
    assert found.leave_spread == pytest.approx((5**2 - (20 * 0.15) ** 2) ** 0.5, abs=0.5)


def test_a_day_begun_by_another_plan_is_no_late_morning():
    assert learn_drives(USUAL, [], [(20.0, 400.0)] * 50) == USUAL


@given(count=st.integers(1, 30), ratio=st.floats(0.6, 1.8))
def test_a_few_drives_lie_between_the_usual_and_their_own(count, ratio):
    found = learn_drives(USUAL, [Driven(20, 20 * ratio)] * count, []).drive_ratio
    assert min(1, ratio) - 1e-9 <= found <= max(1, ratio) + 1e-9
