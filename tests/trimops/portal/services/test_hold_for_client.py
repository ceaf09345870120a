"""A farm client chooses one of the hours they were offered."""

from datetime import timedelta

import pytest

from tests.factories import make_farm, planned
from tests.visits.services.offers import SUNDAY_EVENING, TUESDAY, at, held_rows, urgent
from trimops.portal.services.hold_for_client import hold_for_client
from visits.selectors.client_offers import client_offers
from visits.selectors.offer_again import AskedPlace
from visits.services.hold_offer import OfferIsGone, asked_for


def offered(house, wish, day=TUESDAY):
    found = client_offers(asked_for(house.farm, wish, keeps_told=True), SUNDAY_EVENING)
    return next(AskedPlace(each.van, each.first, each.last) for each in found if each.day == day)


def hold(house, told, wish=None):
    return hold_for_client(
        farm=house.farm, wish=wish or urgent(), told=told, at=SUNDAY_EVENING, by=house.client
    )


def test_the_hour_is_held_in_the_name_of_who_chose_it(house):
    told = offered(house, urgent())
    held = hold(house, told)
    assert (held.by, held.farm, held.is_in_force(SUNDAY_EVENING)) == (house.client, house.farm, True)
    assert told.first <= held.start <= told.last


def test_choosing_another_hour_lets_the_first_one_go(house):
    first = hold(house, offered(house, urgent()))
    second = hold(house, offered(house, urgent(), TUESDAY - timedelta(days=1)))
    states = dict(held_rows(house.scope).values_list("pk", "state"))
    assert states == {first.pk: "let_go", second.pk: "held"}


def test_when_the_new_hour_is_gone_the_old_one_stays_held(house):
    first = hold(house, offered(house, urgent()))
    with pytest.raises(OfferIsGone):
        hold(house, AskedPlace(house.van.pk, at("04:00"), at("04:30")))
    assert held_rows(house.scope).get().pk == first.pk
    assert held_rows(house.scope).get().state == "held"


def test_the_visit_that_moves_for_it_is_found_again_without_the_farm_knowing(house):
    other = planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, at("09:30"), head_count=28
    )
    wish = urgent(head_count=30, due_from=TUESDAY, due_until=TUESDAY)
    told = offered(house, wish)
    assert told.moved is None
    assert hold(house, told, wish).moved_visit == other
