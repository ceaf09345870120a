"""The bench in a small form: one history of a few months, three consumables, the last weeks."""

from dataclasses import replace
from decimal import Decimal

import pytest

from tests.bench.visits.bench_kit_orders import REVIEW, Lived, check, money, share, short_days
from tests.bench.visits.drawn_months import TODAY
from tests.bench.visits.drawn_uses import draw_uses
from tests.bench.visits.lived_year import DAY, FollowForecast, LivedItem, Year
from tests.bench.visits.replay_orders import Evening, Replayed

NAMES = ("Disposable gloves", "Grinder disc", "Boot and kit disinfectant")
"""Bought in packs of a few days' use, so that a short year tells something."""


@pytest.fixture(scope="module")
def year():
    return Year(draw_uses(1, months=7, farms=24), measured=56, before=28, names=NAMES)


@pytest.fixture(scope="module")
def lived(year):
    return Lived(
        work_days=len(year.work_days),
        advice=year.follow(),
        highest=year.keep_the_highest(REVIEW),
        least=year.know_the_future(),
    )


def test_the_advice_is_rarely_short_and_holds_less_than_the_highest_ever_used(lived):
    assert lived.short_days <= 0.05
    assert money(lived.advice) < 0.8 * money(lived.highest)
    assert money(lived.least) <= money(lived.advice)


def test_nobody_who_knows_the_future_is_ever_short(lived):
    assert all(not item.short for item in lived.least)


def test_the_quick_question_asks_what_the_whole_forecast_says(year):
    """The replay asks the last day to order first; it is the forecast's own."""
    advice = FollowForecast(year, year.items[0], 0.95)
    day = year.span[0]
    answers = set()
    for on_hand in (0, 20, 60, 120, 400):
        for later in range(0, 14, 3):
            evening = Evening(day + DAY * later, Decimal(on_hand), ((day + DAY * (later + 2), Decimal(50)),))
            is_due = advice.is_due(evening)
            assert is_due == (advice.forecast(evening).order_by == evening.day)
            answers.add(is_due)
    assert answers == {True, False}


def test_the_bench_raises_where_a_bar_is_missed(lived):
    item = lived.advice[0].item
    full = LivedItem(item, Replayed(stock=[Decimal(30)] * 10), 10)
    lean = LivedItem(item, Replayed(stock=[Decimal(19)] * 10), 10)
    good = Lived(work_days=10, advice=[lean], highest=[full])
    check([good])
    assert share([good, good]) == pytest.approx(19 / 30)
    with pytest.raises(AssertionError, match="two thirds"):
        check([replace(good, advice=[full])])
    short = Replayed(short=[TODAY - DAY, TODAY - 2 * DAY, TODAY - 99 * DAY], stock=[Decimal(20)] * 10)
    with pytest.raises(AssertionError, match=r"short on 20\.0%"):
        check([replace(good, advice=[LivedItem(item, short, 10)])])
    assert short_days([good]) == 0
