"""The wash-down log of a visit."""

from decimal import Decimal

import pytest

from tests.factories import TUESDAY_TEN, make_consumable
from tests.visits.services.sendings import HOUR, made, phone_at, send
from visits.domain.kit.stock_kinds import ConsumableKind
from visits.models import WashDown

AT = TUESDAY_TEN + HOUR


@pytest.fixture
def phone(visit):
    return phone_at(visit)


def wash(at=AT, **changes):
    words = {"substance": "peracetic acid", "dilution": "1:100", "contact_minutes": "5.5"}
    return {**words, "washed_at": at.isoformat(), **changes}


def washed(house):
    return WashDown.objects.within(house.scope)


def test_with_what_how_strong_how_long_and_when(house, visit, phone):
    sent = phone.write(wash(), kind="wash", **made(AT))
    send(phone, house, AT)
    row = washed(house).get()
    assert (row.substance, row.dilution, row.contact_minutes) == ("peracetic acid", "1:100", Decimal("5.5"))
    assert (row.washed_at, row.by, row.visit, str(row.record)) == (AT, house.trimmer, visit, sent["record"])


def test_a_clock_that_is_wrong_is_put_right(house, phone):
    """The phone is three hours ahead: made and sent then, washed ten minutes before."""
    ahead = AT + 3 * HOUR
    phone.write(wash(ahead - HOUR / 6), kind="wash", **made(ahead))
    body = phone.body(sent_at=ahead.isoformat())
    phone.body = lambda **_: body
    send(phone, house, AT)
    assert washed(house).get().washed_at == AT - HOUR / 6


def test_it_names_what_was_mixed_and_how_much(house, phone):
    agent = make_consumable(house.business, "Peracetic acid", ConsumableKind.DISINFECTANT, unit="ml")
    phone.write(wash(consumable=agent.pk, litres="7.5"), kind="wash", **made(AT))
    send(phone, house, AT)
    assert (washed(house).get().consumable, washed(house).get().litres) == (agent, Decimal("7.5"))


def test_mended_it_is_one_row_and_taken_back_none(house, phone):
    first = phone.write(wash(), kind="wash", **made(AT))
    second = phone.edit(first, wash(dilution="1:50"), **made(AT))
    send(phone, house, AT)
    assert washed(house).get().dilution == "1:50"
    phone.undo(second)
    send(phone, house, AT + HOUR)
    assert not washed(house).exists()


def test_two_wash_downs_are_two(house, phone):
    for _ in range(2):
        phone.write(wash(), kind="wash", **made(AT))
    send(phone, house, AT)
    assert washed(house).count() == 2
