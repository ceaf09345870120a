"""The ledger is only added to, and each moment and place comes to what is known last."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import TUESDAY_TEN, make_house, make_kit, under_way
from visits.domain.kit.stock_kinds import UseOf
from visits.models import StockCount, StockMovement
from visits.services.kit.book_uses import Booking, UseAt, book_uses, booked_uses
from visits.services.kit.stock_place import stock_place_of

LATER = TUESDAY_TEN + timedelta(hours=1)


@pytest.fixture
def house(db):
    return make_house()


def test_whatever_is_wanted_in_turn_the_lines_come_to_the_last_of_it(house):
    visit, kit = under_way(house.farm, house.van), make_kit(house.business)
    place, glue, wrap = stock_place_of(visit).pk, kit["glue"].pk, kit["wrap"].pk
    in_turn = (
        {UseAt(glue, place, TUESDAY_TEN): Decimal("12.5")},
        {UseAt(glue, place, TUESDAY_TEN): Decimal(20), UseAt(wrap, place, LATER): Decimal(1)},
        {UseAt(glue, place, LATER): Decimal(20)},
        {},
        {UseAt(wrap, place, LATER): Decimal("-3")},
    )
    before = []
    for wanted in in_turn:
        book_uses(
            booking=Booking(visit, UseOf.BY_HAND, wanted, LATER), booked=booked_uses(visit, UseOf.BY_HAND)
        )
        assert booked_uses(visit, UseOf.BY_HAND).quantities == wanted
        now = list(StockMovement.objects.within(house.scope).order_by("pk").values_list("pk", "quantity"))
        assert now[: len(before)] == before
        before = now
    assert booked_uses(visit, UseOf.WASH).quantities == {}


def test_what_is_heard_late_leaves_the_count_true(house):
    visit, glue = under_way(house.farm, house.van), make_kit(house.business)["glue"]
    place = stock_place_of(visit)
    words = {"consumable": glue, "place": place, "counted": 100, "at": LATER, "noted_at": LATER}
    StockCount.objects.create(business=house.business, by=house.trimmer, **words)
    heard = LATER + timedelta(hours=1)
    wanted = {UseAt(glue.pk, place.pk, at): Decimal(25) for at in (TUESDAY_TEN, heard)}
    book_uses(booking=Booking(visit, UseOf.BY_HAND, wanted, heard), booked=booked_uses(visit, UseOf.BY_HAND))
    lines = StockMovement.objects.within(house.scope).order_by("pk")
    told = list(lines.values_list("kind", "quantity", "at", "noted_at"))
    used = [("used", -25, TUESDAY_TEN, heard), ("used", -25, heard, heard)]
    assert told == [*used, ("counted", 125, LATER, heard)]


def test_the_same_again_writes_nothing(house):
    visit, kit = under_way(house.farm, house.van), make_kit(house.business)
    wanted = {UseAt(kit["wrap"].pk, stock_place_of(visit).pk, LATER): Decimal(1)}
    for _ in range(2):
        book_uses(booking=Booking(visit, UseOf.WASH, wanted, LATER), booked=booked_uses(visit, UseOf.WASH))
    assert StockMovement.objects.within(house.scope).count() == 1
