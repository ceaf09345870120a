"""What a forecast means, told with made-up forecasts."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest

from visits.domain.kit.forecast.item_forecast import DayAhead, ItemForecast
from visits.domain.kit.item_outlook import (
    Standing,
    chance_too_late,
    chance_words,
    expected_words,
    finding_words,
    item_answer,
    lasts_words,
    likely_gone_on,
    runs_out_on,
    used_up_on,
)
from visits.domain.kit.stock_kinds import Unit

TODAY = date(2026, 3, 3)
GLUE = Standing("Glue", Unit.ML, Decimal(200))


def made(cover=6.4, *, chances=None, **words):
    """28 days of which the chance of running out rises by a tenth a day."""
    days = tuple(
        DayAhead(
            TODAY + timedelta(n),
            30.0 * n,
            Decimal(30 * n),
            Decimal(40 * n),
            Decimal(50 * n),
            (chances or (lambda n: min(1.0, n / 10)))(n),
        )
        for n in range(28)
    )
    told = {"reorder_point": Decimal(150), "order_quantity": Decimal(0), "order_by": None, "expiry_loss": 0.0}
    lead = {"expected": 148.6, "q50": Decimal(140), "q80": Decimal(190), "q95": Decimal(230)}
    here = {"here_on": TODAY + timedelta(5), "visits": 40}
    return ItemForecast(consumable=1, days=days, cover_days=cover, **{**told, **lead, **here, **words})


def test_days_of_running_out():
    forecast = made()
    assert used_up_on(forecast, TODAY) == date(2026, 3, 9)
    assert likely_gone_on(forecast) == date(2026, 3, 8)
    assert used_up_on(made(None), TODAY) is None
    assert likely_gone_on(made(chances=lambda n: 0.4)) is None


def test_what_is_on_order_counts_for_the_day_it_runs_out():
    ordered = replace(GLUE, on_order=Decimal(2000))
    forecast = made(chances=lambda n: 0.02)
    assert runs_out_on(forecast, GLUE, TODAY) == date(2026, 3, 9)
    assert runs_out_on(forecast, ordered, TODAY) is None
    assert runs_out_on(made(40), GLUE, TODAY) is None


def test_the_chance_is_that_of_the_day_an_order_is_here():
    assert chance_too_late(made()) == pytest.approx(0.5)
    assert chance_too_late(made(here_on=TODAY - timedelta(1))) == 0.0


@pytest.mark.parametrize(
    ("chance", "words"), [(0.0, "under 1 %"), (0.004, "under 1 %"), (0.123, "12 %"), (0.999, "over 99 %")]
)
def test_a_chance_in_words(chance, words):
    assert chance_words(chance) == words


@pytest.mark.parametrize(
    ("cover", "words"),
    [
        (None, "no use foreseen"),
        (0.3, "used up today"),
        (6.4, "until Mon 9 Mar"),
        (500, "half a year and more"),
        (1e9, "half a year and more"),
    ],
)
def test_how_long_it_lasts(cover, words):
    assert lasts_words(made(cover), TODAY) == words
    assert lasts_words(None, TODAY) == "no use foreseen"


@pytest.mark.parametrize(
    ("forecast", "standing", "answer"),
    [
        (made(), GLUE, "Glue: out on Monday"),
        (made(order_quantity=Decimal(2000)), GLUE, "Glue: out on Monday, order 2,000 ml"),
        (
            made(order_by=TODAY + timedelta(2), order_quantity=Decimal(2000)),
            GLUE,
            "Glue: out on Monday; order by Thursday",
        ),
        (made(0.1), GLUE, "Glue: used up"),
        (made(60.0), GLUE, "Glue: enough beyond 30 March"),
        (made(None), GLUE, "Glue: 200 ml there, no use foreseen"),
        (None, GLUE, "Glue: 200 ml there, no use foreseen"),
        (
            made(0.0),
            replace(GLUE, balance=Decimal(0), is_told=False),
            "Glue: never bought or counted, say what lies there",
        ),
        (
            made(),
            replace(GLUE, below=("Van 1", "Store")),
            "Glue: below nought in Van 1 and Store, count it",
        ),
    ],
)
def test_the_title_answers(forecast, standing, answer):
    assert item_answer(forecast, standing, TODAY) == answer


def test_the_finding_says_the_picture():
    assert finding_words(made(), GLUE, TODAY) == (
        "What you order today is here on Sunday. By then about 150 ml will be used: 8 of 10 times no more than 190 ml, "
        "19 of 20 times no more than 230 ml. 200 ml left now; the chance of running out before is 50 %."
    )


def test_what_goes_past_its_date_and_a_first_guess_are_said():
    words = finding_words(made(expiry_loss=120.4, visits=0), GLUE, TODAY)
    assert "About 120 ml will go past the date unused." in words
    assert words.endswith("You have no history with it yet: these are figures in print and your recipe.")


@pytest.mark.parametrize(
    ("amount", "unit", "words"),
    [
        (0.3, Unit.PAIR, "less than 1 pair"),
        (1.2, Unit.EACH, "about 1"),
        (80.6, Unit.PAIR, "about 81 pairs"),
        (12.4, Unit.ML, "about 12 ml"),
        (148.6, Unit.ML, "about 150 ml"),
    ],
)
def test_a_use_that_is_expected_is_told_in_figures_people_use(amount, unit, words):
    assert expected_words(unit, amount) == words


def test_what_is_on_order_stands_in_the_title():
    ordered = replace(GLUE, on_order=Decimal(2000))
    assert item_answer(made(), ordered, TODAY) == "Glue: out on Sunday, 2,000 ml on order"
    soon = made(order_by=TODAY + timedelta(2))
    assert (
        item_answer(soon, ordered, TODAY) == "Glue: out on Sunday, 2,000 ml on order; order more by Thursday"
    )
    now = made(order_quantity=Decimal(4000))
    assert item_answer(now, ordered, TODAY) == "Glue: out on Sunday, 2,000 ml on order, order 4,000 ml more"
