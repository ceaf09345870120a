from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.visits.domain.visit_lengths.made_history import BROUGHT, FIRST_DAY, made_history, made_visit
from visits.domain.visit_length import LengthFigures
from visits.domain.visit_lengths.finished_visit import Asked
from visits.domain.visit_lengths.learn_lengths import (
    FEWEST_VISITS,
    common_share,
    fit_rule,
    flat_minutes_per_cow,
    hold_out,
    learn_lengths,
)
from visits.domain.visit_lengths.learned_rule import likely_length, usual_rule

FIGURES = LengthFigures()


def told(rule, farm=1, cows=20, lame=0, van=1):
    return likely_length(rule, Asked(farm, van, BROUGHT, cows, lame))


def test_with_too_few_visits_nothing_is_learned():
    history, _ = made_history(visits=FEWEST_VISITS - 1)
    assert learn_lengths(history, FIGURES) is None
    history, _ = made_history(visits=FEWEST_VISITS)
    assert learn_lengths(history, FIGURES).rule.visits == FEWEST_VISITS


def test_the_true_pace_is_found_and_a_new_farm_goes_by_it():
    history, _ = made_history(visits=400, pace=11.0, farm_spread=0.6)
    rule = learn_lengths(history, FIGURES).rule
    more = told(rule, farm=99, cows=30, van=None).minutes - told(rule, farm=99, cows=10, van=None).minutes
    assert more / 20 == pytest.approx(11.0, abs=0.6)
    assert told(rule, farm=99).visits_here == 0


def at_one_slow_farm(visits):
    """One farm at 14 minutes a cow among eight at 8."""
    usual = [made_visit(2 + n % 8, 60 + 8 * 20, 20, 0, day=FIRST_DAY + timedelta(days=n)) for n in range(80)]
    slow = [made_visit(1, 60 + 14 * 20, 20, 0, day=FIRST_DAY + timedelta(days=n)) for n in range(visits)]
    return told(fit_rule([*usual, *slow], FIGURES), 1).minutes


def test_a_farm_lies_between_the_mean_of_all_and_its_own_and_nears_its_own_with_every_visit():
    lengths = [at_one_slow_farm(visits) for visits in (0, 1, 3, 10, 40)]
    assert lengths == sorted(lengths)
    assert lengths[0] == pytest.approx(60 + 8 * 20, rel=0.06)
    assert lengths[1] < 60 + 13 * 20
    assert lengths[-1] == pytest.approx(60 + 14 * 20, rel=0.03)


@settings(max_examples=15)
@given(minutes=st.floats(100, 500), visits=st.integers(1, 6))
def test_a_little_history_lies_between_the_planning_figures_and_itself(minutes, visits):
    history = [made_visit(1, minutes, 20, 0, day=FIRST_DAY + timedelta(days=n)) for n in range(visits)]
    length = told(fit_rule(history, FIGURES)).minutes
    usual = told(usual_rule(FIGURES)).minutes
    assert min(usual, minutes) - 1e-6 <= length <= max(usual, minutes) + 1e-6


def test_finishes_forgotten_for_hours_do_not_wreck_what_is_learned():
    history, _ = made_history(visits=300)
    forgotten = [replace(v, minutes=v.minutes + 600) if n % 20 == 0 else v for n, v in enumerate(history)]
    clean, soiled = (learn_lengths(some, FIGURES).rule for some in (history, forgotten))
    for farm in range(1, 13):
        before, after = told(clean, farm, van=1 + farm % 2), told(soiled, farm, van=1 + farm % 2)
        assert after.minutes == pytest.approx(before.minutes, rel=0.06)
        assert after.high - after.low < 2 * (before.high - before.low)


def test_what_was_kept_aside_is_told_better_than_by_a_flat_figure_per_cow():
    history, _ = made_history(visits=300)
    found = learn_lengths(history, FIGURES).held_out
    assert found.visits == 60
    assert found.error < 0.8 * found.flat_error
    assert 0.6 <= found.kept <= 0.95


def test_the_account_of_a_rule_is_counted_from_the_visits_alone():
    rule = usual_rule(FIGURES)
    likely = told(rule)
    late = [made_visit(1, likely.minutes + 30, 20, 0), made_visit(1, likely.high + 500, 20, 0)]
    found = hold_out(rule, [made_visit(minutes=100, cows=10)], late, FIGURES)
    assert found.kept == 0.5
    assert found.error == pytest.approx((30 + likely.high + 500 - likely.minutes) / 2)
    assert found.flat_error == pytest.approx(sum(abs(200 - visit.minutes) for visit in late) / 2)
    assert flat_minutes_per_cow([made_visit(minutes=100, cows=10)]) == 10


def on_days(errors_by_day):
    visits, errors = [], []
    for number, row in enumerate(errors_by_day):
        for error in row:
            visits.append(made_visit(day=FIRST_DAY + timedelta(days=number)))
            errors.append(error)
    return visits, errors


def test_days_that_run_late_together_are_noticed():
    together = common_share(*on_days([(1.0, 1.0), (-1.0, -1.0)] * 100))
    apart = common_share(*on_days([(1.0, -1.0), (-1.0, 1.0)] * 100))
    assert together > 0.7
    assert apart == 0


def test_without_two_visits_on_a_day_the_usual_share_stands():
    assert common_share(*on_days([(1.0,), (-1.0,)])) == pytest.approx(0.2)


def test_the_same_history_teaches_the_same():
    history, _ = made_history(visits=60)
    assert learn_lengths(history, FIGURES) == learn_lengths(list(reversed(history)), FIGURES)
