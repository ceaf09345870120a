"""What a visit uses once, however many cows it has."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import (
    NOON,
    finish,
    make_consumable,
    make_cow,
    make_house,
    planned,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.domain.kit.stock_kinds import ConsumableKind, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.models import StockMovement, UseRule
from visits.services.call_off_visit import call_off_visit
from visits.services.finish_visit import SignOff, change_sign_off
from visits.services.kit.use_visit_kit import use_visit_kit

ONCE, EACH_COW = Recipe(UsePer.VISIT, Decimal(2)), Recipe(UsePer.COW, Decimal(1))


@pytest.fixture
def house(db):
    house = make_house()
    make_consumable(house.business, "Overalls", ConsumableKind.OTHER, ONCE)
    make_consumable(house.business, "Gloves", ConsumableKind.GLOVES, ONCE, EACH_COW, unit="pair")
    return house


def lines(house):
    rows = StockMovement.objects.within(house.scope).filter(use_of="visit").order_by("consumable__name")
    return list(rows.values_list("consumable__name", "quantity"))


def test_it_is_booked_at_the_finish_and_not_before(house):
    visit = under_way(house.farm, house.van)
    for number in ("7", "8"):
        put_down(visit, make_cow(house.farm, number), trimmed_foot())
    assert lines(house) == []
    done = finish(visit, house.trimmer)
    assert lines(house) == [("Gloves", Decimal(-2)), ("Overalls", Decimal(-2))]
    line = StockMovement.objects.within(house.scope).filter(use_of="visit").first()
    assert (line.visit, line.place.van, line.at, line.trim) == (visit, house.van, done.finished_at, None)


def test_it_is_not_booked_again_by_whatever_comes_later(house):
    visit = under_way(house.farm, house.van)
    done = finish(visit, house.trimmer)
    UseRule.objects.within(house.scope).update(quantity=Decimal(5))
    change_sign_off(visit=done, sign_off=SignOff("The milker", True), at=done.finished_at + timedelta(days=1))
    put_down(done, house.cow, trimmed_foot())
    use_visit_kit(visit=done, at=done.finished_at + timedelta(days=1))
    assert lines(house) == [("Gloves", Decimal(-2)), ("Overalls", Decimal(-2))]


def test_a_visit_that_is_called_off_uses_nothing(house):
    visit = planned(house.farm, house.van)
    call_off_visit(visit=visit, because="Snow", at=NOON, by=house.owner)
    assert lines(house) == []
