from datetime import date, timedelta

import numpy as np
import pytest

from tests.visits.domain.kit.forecast.made_models import MONDAY, RECHECK, ROUTINE, URGENT, calls, made
from visits.domain.kit.forecast.open_work import OpenWork, learn_calls, working_weekdays


def weeks(number):
    """Every working day of so many weeks before this Monday."""
    days = [MONDAY - timedelta(days=n) for n in range(1, 7 * number + 1)]
    return {day: 1.0 for day in days if day.weekday() < 5}


def test_weekdays_on_which_work_is_an_exception_are_no_working_days():
    days = [MONDAY + timedelta(days=7 * week + n) for week in range(20) for n in range(5)]
    assert working_weekdays([*days, date(2026, 12, 5)]) == {0, 1, 2, 3, 4}
    assert working_weekdays([]) == frozenset()


def test_the_further_ahead_the_more_is_still_open():
    """Ten weeks of fifty working days: ten calls of the day itself, twenty visits known six days before."""
    past = [made(0, reason=URGENT, days=-7 * n, notice=0) for n in range(1, 11)]
    past += [made(0, reason=URGENT, days=-7 * n - 1 - k, notice=6) for n in range(10) for k in (2, 3)]
    told = learn_calls(past, weeks(10))
    assert [told.still_open(ahead) for ahead in (0, 1, 5, 6, 30, None)] == pytest.approx(
        [0.2] * 3 + [0.6] * 3
    )


def test_where_nobody_knows_the_notice_a_usual_one_is_taken():
    told = learn_calls([made(0, reason=URGENT, days=-7)] * 5, weeks(1))
    assert (told.still_open(0), told.still_open(1)) == (0, 1)
    told = learn_calls([made(0, reason=RECHECK, days=-7)] * 5, weeks(1))
    assert (told.still_open(5), told.still_open(6)) == (0, 1)


def test_weeks_that_are_alike_or_differ_give_the_variance():
    alike = [made(0, days=-7 * n) for n in range(1, 41) for _ in range(4)]
    wild = [made(0, days=-7 * n) for n in range(1, 41, 4) for _ in range(16)]
    assert learn_calls(alike, weeks(40)).ratio < 0.5
    assert learn_calls(wild, weeks(40)).ratio > 5
    assert learn_calls([made(0, days=-7)], {}).ratio == 1


def test_work_on_a_day_off_is_told_with_the_working_days():
    assert learn_calls([made(0, days=-1)] * 5, weeks(1)).still_open(None) == 1


def test_open_work_of_all_reasons_is_added():
    work = OpenWork(
        frozenset({0}),
        {ROUTINE: calls(0.0, 0.5), URGENT: calls(0.25)},
        {ROUTINE: np.array([0.0, 0.0, 1.0]), URGENT: np.array([0.0, 1.0])},
    )
    means = [float(cells @ np.arange(len(cells))) for cells in (work.cells(0), work.cells(None))]
    assert means == pytest.approx([0.25, 1.25])
    assert (work.works_on(MONDAY), work.works_on(MONDAY + timedelta(days=1))) == (True, False)
    assert OpenWork().cells(None).tolist() == [1.0]
