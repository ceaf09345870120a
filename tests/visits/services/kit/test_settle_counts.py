"""Counts stay true whatever is heard later."""

from datetime import timedelta
from itertools import permutations

import pytest

from tests.factories import NOON, make_house, make_kit, stock_up, under_way
from tests.visits.services.kit.stock_words import amount, word
from visits.domain.kit.stock_kinds import UseOf
from visits.models import StockMovement
from visits.selectors.kit.balances_at import balances_at
from visits.services.kit.book_uses import Booking, UseAt, book_uses, booked_uses
from visits.services.kit.count_stock import count_stock
from visits.services.kit.settle_counts import settle_counts
from visits.services.kit.stock_place import place_of_van


def after(minutes):
    return NOON + timedelta(minutes=minutes)


@pytest.fixture
def glue(house):
    glue = make_kit(house.business)["glue"]
    stock_up(glue, 500, at=after(0), van=house.van)
    return glue


@pytest.fixture
def van(house):
    return place_of_van(house.van)


def balances(glue, van, *minutes):
    moments = [((glue.pk, van.pk), after(minute)) for minute in minutes]
    found = balances_at(glue.scope, moments)
    return [found[moment] for moment in moments]


def uses(house, glue, van, wanted):
    """Uses of one visit by minute, as a phone sends them some time."""
    visit = under_way(house.farm, house.van)
    for minute, quantity in wanted:
        booked = booked_uses(visit, UseOf.BY_HAND)
        all_of_it = {**booked.quantities, UseAt(glue.pk, van.pk, after(minute)): quantity}
        book_uses(booking=Booking(visit, UseOf.BY_HAND, all_of_it, after(900)), booked=booked)


@pytest.mark.parametrize("order", list(permutations([(10, 40), (20, 25), (60, 30)]))[::2])
def test_uses_may_come_in_any_order_before_between_and_after_counts(house, glue, van, order):
    count_stock(place=van, counted=[amount(glue, 470)], word=word(house, at=after(15)))
    count_stock(place=van, counted=[amount(glue, 400)], word=word(house, at=after(30)))
    uses(house, glue, van, order)
    assert balances(glue, van, 14, 15, 29, 30, 70) == [460, 470, 445, 400, 370]


def test_a_use_that_is_taken_back_again_leaves_them_true_too(house, glue, van):
    count_stock(place=van, counted=[amount(glue, 470)], word=word(house, at=after(15)))
    uses(house, glue, van, [(10, 40), (10, 0), (15, 5)])
    assert balances(glue, van, 14, 15, 16) == [500, 470, 470]


def test_lines_are_only_added_and_a_true_count_adds_none(house, glue, van):
    count_stock(place=van, counted=[amount(glue, 470)], word=word(house, at=after(15)))
    before = list(StockMovement.objects.within(house.scope).order_by("pk").values())
    words = {"scope": house.scope, "touched": {(glue.pk, van.pk)}, "noted_at": after(99)}
    assert settle_counts(since=after(0), **words) == []
    uses(house, glue, van, [(10, 40)])
    now = list(StockMovement.objects.within(house.scope).order_by("pk").values())
    assert now[: len(before)] == before
    assert [(row["kind"], row["count_id"] is not None) for row in now[len(before) :]] == [
        ("used", False),
        ("counted", True),
    ]


def test_where_nobody_counted_since_it_takes_two_queries(house, glue, van, django_assert_num_queries):
    words = {"scope": house.scope, "touched": {(glue.pk, van.pk)}, "noted_at": after(99)}
    with django_assert_num_queries(4):  # with the two of its savepoint
        assert settle_counts(since=after(0), **words) == []
    with django_assert_num_queries(2):
        assert settle_counts(since=after(0), **{**words, "touched": set()}) == []


def test_counts_of_another_place_thing_or_business_are_left_alone(house, glue, van):
    other = make_house("Another business")
    kit = make_kit(other.business)
    count_stock(
        place=place_of_van(other.van), counted=[amount(kit["glue"], 3)], word=word(other, at=after(5))
    )
    before = StockMovement.objects.within(other.scope).count()
    count_stock(place=van, counted=[amount(glue, 470)], word=word(house, at=after(15)))
    uses(house, glue, van, [(10, 40)])
    assert StockMovement.objects.within(other.scope).count() == before == 1
