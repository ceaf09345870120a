"""Whoever writes of the stock waits for whoever does."""

from datetime import timedelta
from decimal import Decimal

import pytest
from django.db import transaction

from tests.factories import NOON, make_house, make_kit, under_way
from tests.many_hands import ManyHands
from tests.visits.services.kit.stock_words import amount, ledger, word
from visits.domain.kit.stock_kinds import UseOf
from visits.models import StockMovement
from visits.services.kit.book_uses import Booked, Booking, UseAt, book_uses
from visits.services.kit.count_stock import count_stock
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.move_stock import Way, move_stock
from visits.services.kit.stock_place import place_of_van, store_of


def test_one_query_locks_all_of_the_business(house, django_assert_num_queries):
    make_kit(house.business)
    with transaction.atomic(), django_assert_num_queries(1):
        lock_stock(scope=house.scope)


@pytest.mark.django_db(transaction=True)
def test_many_who_count_move_and_use_at_once_leave_every_count_true_and_book_each_form_once(
    tmp_path, monkeypatch
):
    house = make_house()
    kit = make_kit(house.business)
    way = Way(store_of(house.scope), place_of_van(house.van))
    once = word(house)

    visits = [under_way(house.farm, house.van, NOON + timedelta(days=days)) for days in (1, 2)]

    def act(number):
        if number > 5:
            use = {UseAt(kit["glue"].pk, way.target.pk, NOON): Decimal(number)}
            with transaction.atomic():
                book_uses(booking=Booking(visits[number - 6], UseOf.BY_HAND, use, NOON), booked=Booked())
        elif number < 3:
            moved = [amount(kit["glue"], 7), amount(kit["wood"], 2)]
            move_stock(way=way, moved=moved, word=once, is_really_there=True)
        else:
            late = word(house, at=NOON + timedelta(minutes=number))
            counted = [amount(kit[name], number) for name in ("wood", "glue")]
            count_stock(place=way.target, counted=counted, word=late)

    hands = ManyHands(tmp_path, monkeypatch)
    hands(act, list(range(8)))
    (seen,) = hands(lambda _: told(kit, way), [0])
    for name in ("wood", "glue"):
        lines, balances = seen[name]
        assert lines.count("moved") == 2
        assert balances == [Decimal(number) for number in (3, 4, 5)]


def told(kit, way):
    """By thing: the kinds of its lines, and the balance of the van at each of the counts."""
    found = {}
    for name in ("wood", "glue"):
        rows = list(StockMovement.objects.within(way.source.scope).filter(consumable=kit[name]))
        moments = [NOON + timedelta(minutes=number) for number in (3, 4, 5)]
        here = [row for row in rows if row.place_id == way.target.pk]
        sums = [sum(row.quantity for row in here if row.at <= moment) for moment in moments]
        found[name] = ([kind for kind, _, _ in ledger(kit[name])], sums)
    return found
