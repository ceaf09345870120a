"""Both figures of a visit's kit: what counted itself, and what was put right by hand."""

from decimal import Decimal

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import (
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_consumable,
    make_house,
    make_kit,
    put_down,
    under_way,
)
from tests.visits.services.sendings import HOUR, made, phone_at, send
from visits.domain.kit.stock_kinds import ConsumableKind, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.selectors.kit.visit_uses import visit_uses

AT = TUESDAY_TEN + HOUR


@pytest.fixture
def house(db):
    return make_house()


def worked(house):
    """One block on, one glue pot knocked over, one bucket mixed, one pair of gloves."""
    visit, kit = under_way(house.farm, house.van), make_kit(house.business)
    glove = Recipe(UsePer.VISIT, Decimal(1))
    make_consumable(house.business, "Gloves", ConsumableKind.GLOVES, glove, unit="pair")
    agent = make_consumable(house.business, "Iodophor", ConsumableKind.DISINFECTANT, unit="ml")
    put_down(visit, house.cow, blocked_foot())
    phone = phone_at(visit)
    phone.write({"consumable": kit["glue"].pk, "extra": "200"}, kind="kit", **made(AT))
    wash = {"substance": "iodophor", "dilution": "1:100", "contact_minutes": "5", "washed_at": AT.isoformat()}
    phone.write({**wash, "consumable": agent.pk, "litres": "10"}, kind="wash", **made(AT))
    send(phone, house, AT)
    finish(visit, house.trimmer)
    return visit


def test_each_figure_stands_by_itself_and_they_add_up(house):
    told = {use.consumable.name: use for use in visit_uses(house.scope, worked(house))}
    assert told.keys() == {"Gloves", "Glue", "Iodophor", "Wooden block"}
    glue = told["Glue"]
    assert (glue.by_cows, glue.by_hand, glue.counted, glue.used) == (25, 200, 25, 225)
    assert (told["Gloves"].once, told["Iodophor"].mixed, told["Wooden block"].used) == (1, 100, 1)


def test_another_business_sees_nothing_of_it(house):
    assert visit_uses(make_house("Far").scope, worked(house)) == []


def test_the_visit_s_page_shows_both(house):
    client = Client()
    client.force_login(house.office)
    page = client.get(reverse("visit", args=[worked(house).pk])).content.decode()
    for words in (
        "Kit used",
        "25 ml",
        "+200 ml",
        "225 ml",
        "1 pair of it for the visit",
        "100 ml of it for washing",
    ):
        assert words in page
    assert "1:100, 10 l of Iodophor" in page
