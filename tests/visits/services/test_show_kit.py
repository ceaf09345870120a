"""Kit used beyond what the cows say, in a ledger that is only added to."""

from decimal import Decimal

import pytest

from tests.factories import TUESDAY_TEN, make_kit
from tests.visits.api.phone import blocked, cow_content
from tests.visits.services.sendings import HOUR, made, phone_at, send
from visits.models import StockMovement

AT = TUESDAY_TEN + HOUR


@pytest.fixture
def kit(house):
    return make_kit(house.business)


def word(phone, item, extra, at=AT, **more):
    return phone.write({"consumable": item.pk, "extra": extra}, kind="kit", **made(at), **more)


def beyond(house):
    rows = StockMovement.objects.within(house.scope).filter(trim__isnull=True).order_by("pk")
    return list(rows.values_list("consumable__name", "quantity", "kind"))


def test_what_was_used_beside_the_cows_goes_off_the_van(house, visit, kit):
    phone = phone_at(visit)
    word(phone, kit["wrap"], "2")
    send(phone, house, AT)
    assert beyond(house) == [("Wrap", Decimal(-2), "used")]
    movement = StockMovement.objects.within(house.scope).get()
    assert (movement.visit, movement.place.van, movement.at) == (visit, house.van, AT)


def test_a_second_word_writes_the_difference_and_the_same_word_nothing(house, visit, kit):
    phone = phone_at(visit)
    first = word(phone, kit["wrap"], "2")
    send(phone, house, AT)
    second = phone.edit(first, {"consumable": kit["wrap"].pk, "extra": "-1"}, **made(AT + HOUR))
    send(phone, house, AT + HOUR)
    phone.edit(second, **made(AT + HOUR))
    send(phone, house, AT + HOUR)
    assert [quantity for _, quantity, _ in beyond(house)] == [Decimal(-2), Decimal(3)]


def test_a_word_put_right_stays_at_its_moment_and_tells_when_it_was_heard(house, visit, kit):
    phone = phone_at(visit)
    first = word(phone, kit["wrap"], "2")
    send(phone, house, AT)
    phone.edit(first, {"consumable": kit["wrap"].pk, "extra": "5"}, **made(AT + HOUR))
    send(phone, house, AT + 2 * HOUR)
    lines = StockMovement.objects.within(house.scope).order_by("pk").values_list("quantity", "at", "noted_at")
    assert list(lines) == [(Decimal(-2), AT, AT), (Decimal(-3), AT, AT + 2 * HOUR)]


def test_taken_back_it_comes_back(house, visit, kit):
    phone = phone_at(visit)
    first = word(phone, kit["wrap"], "2")
    send(phone, house, AT)
    phone.undo(first)
    send(phone, house, AT + HOUR)
    assert sum(quantity for _, quantity, _ in beyond(house)) == 0


def test_of_two_phones_the_latest_word_on_one_thing_counts(house, visit, kit):
    one, two = phone_at(visit), phone_at(visit)
    word(two, kit["wrap"], "5", AT + HOUR)
    send(two, house, AT + HOUR)
    word(one, kit["wrap"], "2", AT)
    word(one, kit["glue"], "10", AT)
    send(one, house, AT + HOUR)
    sums = {name: quantity for name, quantity, _ in beyond(house)}
    assert sums == {"Wrap": Decimal(-5), "Glue": Decimal(-10)}


def test_where_the_latest_is_taken_back_the_other_phones_word_counts(house, visit, kit):
    one, two = phone_at(visit), phone_at(visit)
    word(one, kit["wrap"], "2", AT)
    send(one, house, AT)
    two.undo(word(two, kit["wrap"], "5", AT))
    send(two, house, AT + HOUR)
    assert sum(quantity for _, quantity, _ in beyond(house)) == -2


def test_cows_and_kit_are_counted_apart(house, visit, kit):
    phone = phone_at(visit)
    phone.write(cow_content(house.cow.pk, blocked()))
    word(phone, kit["wood"], "1")
    send(phone, house, AT)
    assert beyond(house) == [("Wooden block", Decimal(-1), "used")]
