from decimal import Decimal

import pytest

from tests.visits.domain.kit.forecast.made_models import ROUTINE, URGENT, booked, made
from visits.domain.actions import BlockKind
from visits.domain.kit.forecast.first_guess import first_guess
from visits.domain.kit.forecast.learn_use import learn_use
from visits.domain.kit.forecast.past_work import past_work
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe

GLUE = first_guess([Recipe(UsePer.BLOCK, Decimal(40), BlockKind.WOOD)])
WASH = Decimal(200)


def weeks(number, used, *, farm=1, **fields):
    return [made(used, days=-7 * n, farm=farm, **fields) for n in range(1, number + 1)]


def test_a_new_business_is_told_the_published_rate_by_its_recipe():
    told = learn_use([], GLUE)
    assert (told.step, told.visits) == (40, 0)
    assert told.of_visit(booked(100)).mean == pytest.approx(100 * 0.011 * 40 * 0.97, rel=0.02)
    assert told.of_open_day().quantile(1) == 0


def test_the_published_rate_fades():
    few, many = (learn_use(weeks(n, [40] * 3, routine=30), GLUE) for n in (1, 50))
    assert 0.011 < few.rates.routine.mean < many.rates.routine.mean < 0.1
    assert many.rates.routine.mean > 0.095


def test_use_is_told_in_the_item_s_own_steps():
    told = learn_use(weeks(30, [40, 40, 80], routine=30), GLUE).of_visit(booked(30))
    assert told.step == 40
    assert told.mean == pytest.approx(160, rel=0.1)
    assert told.quantile(0.95) % 40 == 0


def test_a_farm_that_uses_more_is_told_more():
    past = [
        visit
        for farm in range(8)
        for visit in weeks(20, [1] * (6 if farm == 0 else 1), routine=30, farm=farm)
    ]
    told = learn_use(past)
    much, little, new = (told.of_visit(booked(30, farm=farm)) for farm in (0, 1, 77))
    assert much.mean == pytest.approx(6, rel=0.1)
    assert little.mean < new.mean < much.mean


def test_lame_cows_of_urgent_visits_are_told_apart():
    past = [*weeks(30, [], routine=30), *weeks(30, [1, 1], routine=0, corrective=2, reason=URGENT)]
    told = learn_use(past)
    assert told.of_visit(booked(2, 2, reason=URGENT)).quantile(0.5) == 2
    assert told.of_visit(booked(2)).mean < 0.1


def test_a_wash_down_of_every_visit_is_told_with_every_visit():
    told = learn_use(weeks(40, WASH, sizes=(), routine=30))
    assert told.step == 200
    assert told.of_visit(booked(30)).quantile(0.5) == 200
    assert told.of_open_day().mean == pytest.approx(200, rel=0.1)


def test_work_on_which_nobody_has_booked_yet():
    """A visit every Monday, known a week before: three days ahead it is booked, three weeks ahead it is not."""
    told = learn_use(weeks(40, [1], notice=7))
    assert told.of_open_day(3).mean == 0
    assert told.of_open_day(21).mean == told.of_open_day().mean == pytest.approx(1, rel=0.1)
    assert told.works_on(booked().day)
    assert not told.works_on(booked(days=1).day)


def test_the_order_of_the_visits_does_not_matter():
    past = [*weeks(9, [40, 80], routine=12), *weeks(5, [40], routine=20, farm=2)]
    first, again = learn_use(past, GLUE), learn_use(past[::-1], GLUE)
    assert first.of_visit(booked(20)).chances == pytest.approx(again.of_visit(booked(20)).chances)


def test_consumables_share_the_work_and_a_newer_one_has_fewer_visits():
    past = weeks(40, [1], routine=20, notice=7)[::-1]
    work = past_work(past)
    assert learn_use(past, work=work).of_visit(booked(9)) == learn_use(past).of_visit(booked(9))
    newer = learn_use(past[-3:], work=work)
    assert newer.visits == 3
    assert newer.open_work.calls == work.calls
    with pytest.raises(ValueError, match="not so many"):
        learn_use([*past, *past], work=work)


def test_hands_that_correct_downwards_never_make_it_less_than_nothing():
    past = weeks(30, 30, sizes=((Decimal(40), 1),), routine=1)
    told = learn_use(past).of_visit(booked(1))
    assert told.mean == pytest.approx(30, rel=0.1)
    assert told.quantile(0) == 0
    assert ROUTINE in learn_use(past).per_visit
