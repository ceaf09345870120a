"""What is mixed for a wash-down goes off the van's stock, and comes back with the word of it."""

from decimal import Decimal

import pytest

from tests.factories import TUESDAY_TEN, make_consumable, make_house, under_way
from tests.visits.services.sendings import HOUR, made, outcomes, phone_at, reasons, send
from visits.domain.kit.stock_kinds import ConsumableKind
from visits.models import StockMovement

AT = TUESDAY_TEN + HOUR


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def visit(house):
    return under_way(house.farm, house.van)


@pytest.fixture
def agent(house):
    return make_consumable(house.business, "Iodophor", ConsumableKind.DISINFECTANT, unit="ml")


def wash(item, at=AT, **changes):
    words = {"substance": "iodophor", "dilution": "1:100", "contact_minutes": "5", "litres": "10"}
    return {**words, "consumable": item.pk, "washed_at": at.isoformat(), **changes}


def told(phone, house, content, at=AT):
    sent = phone.write(content, kind="wash", **made(at))
    send(phone, house, at)
    return sent


def lines(house):
    rows = StockMovement.objects.within(house.scope).filter(use_of="wash").order_by("pk")
    return list(rows.values_list("quantity", "at"))


def test_one_to_a_hundred_in_ten_litres_is_a_hundred_ml(house, visit, agent):
    told(phone_at(visit), house, wash(agent))
    line = StockMovement.objects.within(house.scope).get()
    assert (line.quantity, line.kind, line.use_of) == (Decimal(-100), "used", "wash")
    assert (line.consumable, line.place.van, line.visit, line.at) == (agent, house.van, visit, AT)


def test_mended_it_books_the_difference_and_taken_back_it_comes_back(house, visit, agent):
    phone = phone_at(visit)
    first = told(phone, house, wash(agent))
    second = phone.edit(first, wash(agent, litres="20"), **made(AT + HOUR))
    send(phone, house, AT + HOUR)
    assert [quantity for quantity, _ in lines(house)] == [-100, -100]
    phone.undo(second)
    send(phone, house, AT + 2 * HOUR)
    assert sum(quantity for quantity, _ in lines(house)) == 0


def test_of_another_hour_it_moves_to_that_hour(house, visit, agent):
    phone = phone_at(visit)
    first = told(phone, house, wash(agent))
    phone.edit(first, wash(agent, at=AT - HOUR / 2), **made(AT))
    send(phone, house, AT)
    assert lines(house) == [(-100, AT), (-100, AT - HOUR / 2), (100, AT)]


def test_two_wash_downs_of_one_minute_are_two(house, visit, agent):
    phone = phone_at(visit)
    for _ in range(2):
        told(phone, house, wash(agent))
    assert sum(quantity for quantity, _ in lines(house)) == -200


@pytest.mark.parametrize(
    ("unit", "density", "dilution", "used"),
    [
        ("ml", None, "2 % w/v", None),
        ("ml", "1.25", "2 % w/v", "160.00"),
        ("g", None, "2 % w/v", "200.00"),
        ("g", None, "2 %", "200.00"),
        ("g", "1.25", "2 % v/v", "250.00"),
        ("each", None, "1:100", None),
        ("ml", None, "a good glug", None),
    ],
)
def test_it_is_booked_in_the_unit_of_the_stock_or_not_at_all(house, visit, unit, density, dilution, used):
    more = {"grams_per_ml": Decimal(density)} if density else {}
    item = make_consumable(house.business, "Powder", ConsumableKind.DISINFECTANT, unit=unit, **more)
    told(phone_at(visit), house, wash(item, dilution=dilution))
    assert lines(house) == ([(-Decimal(used), AT)] if used else [])


def test_phones_that_do_not_ask_for_it_use_nothing_up(house, visit, agent):
    phone = phone_at(visit)
    content = wash(agent)
    told(phone, house, {name: content[name] for name in content if name not in ("consumable", "litres")})
    told(phone, house, wash(agent, consumable=None))
    told(phone, house, wash(agent, litres=None))
    assert lines(house) == []


def test_another_business_s_bottle_is_refused_by_its_field(house, visit):
    theirs = make_consumable(make_house("Far").business, "Iodophor", ConsumableKind.DISINFECTANT, unit="ml")
    phone = phone_at(visit)
    phone.write(wash(theirs), kind="wash", **made(AT))
    answers = send(phone, house, AT)
    assert outcomes(answers) == ["refused"]
    assert reasons(answers) == [[("content.consumable", "is not among your kit")]]
