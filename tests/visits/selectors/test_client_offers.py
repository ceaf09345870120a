"""What a farm is offered without anybody at the office."""

from dataclasses import astuple

import pytest

from tests.factories import make_farm, make_house, make_van, planned
from tests.visits.services.offers import SUNDAY_EVENING, TUESDAY, at, place_of, urgent
from visits.selectors.client_offers import MOST, client_offers, offered_place
from visits.selectors.farm_offers import farm_offers
from visits.selectors.offer_again import AskedPlace
from visits.services.hold_offer import OfferIsGone, OfferToHold, asked_for, hold_offer
from visits.services.take_offer import take_offer
from visits.services.tell_hour import tell_hour


@pytest.fixture
def house(db):
    return make_house()


def asked(house, **changes):
    return asked_for(house.farm, urgent(**changes), keeps_told=True)


def neighbour(house, head_count=2, start="09:30"):
    farm = make_farm(house.business, "High Croft", by=house.owner)
    return planned(farm, house.van, at(start), head_count=head_count)


def test_hours_come_in_order_of_time_and_say_nothing_of_another_farm(house):
    neighbour(house)
    found = client_offers(asked(house), SUNDAY_EVENING)
    assert 1 < len(found) <= MOST
    assert found == sorted(found, key=lambda offer: offer.first)
    assert {offer.is_between for offer in found} == {True, False}
    assert "High Croft" not in str([astuple(offer) for offer in found])


def test_wished_weekdays_come_before_cheaper_ones(house):
    found = client_offers(asked(house), SUNDAY_EVENING, weekdays=[1])
    assert any(offer.is_wished_day for offer in found)
    assert {offer.is_wished_day for offer in found if offer.day == TUESDAY} == {True}
    assert {offer.is_wished_day for offer in found if offer.day != TUESDAY} <= {False}


def test_an_hour_that_a_farm_was_told_is_not_moved_for_another(house):
    """A visit of half a day at 09:30: merely planned it may move, told it may not."""
    other = neighbour(house, head_count=28)
    room = urgent(head_count=30, due_until=TUESDAY)
    loose = farm_offers(asked_for(house.farm, room), SUNDAY_EVENING)
    assert any(line.moved and line.moved.visit == other for line in loose.moves)
    tell_hour(visit=other, at=SUNDAY_EVENING, by=house.owner)
    kept = farm_offers(asked_for(house.farm, room, keeps_told=True), SUNDAY_EVENING)
    assert not [line for line in kept.moves if line.moved.visit == other]


def test_a_told_hour_stands_when_one_beside_it_is_held_and_taken(house):
    other = neighbour(house)
    line = next(
        line
        for line in farm_offers(asked_for(house.farm, urgent()), SUNDAY_EVENING).fits
        if line.last > at("09:30") > line.first and line.day == TUESDAY
    )
    tell_hour(visit=other, at=SUNDAY_EVENING, by=house.owner)
    offer = OfferToHold(urgent(), AskedPlace(line.van.pk, at("09:30"), at("09:30")), keeps_told=True)
    with pytest.raises(OfferIsGone):
        hold_offer(farm=house.farm, offer=offer, at=SUNDAY_EVENING, by=house.client)
    before = OfferToHold(urgent(), place_of(line), keeps_told=True)
    held = hold_offer(farm=house.farm, offer=before, at=SUNDAY_EVENING, by=house.client)
    take_offer(held=held, at=SUNDAY_EVENING, by=house.client, keeps_told=True)
    other.refresh_from_db()
    assert other.planned_start == at("09:30")


def test_a_place_that_was_told_is_found_again_with_the_visit_that_moves_for_it(house):
    other = neighbour(house, head_count=28)
    wanted = asked(house, head_count=30, due_from=TUESDAY, due_until=TUESDAY)
    (offer, *_) = [each for each in client_offers(wanted, SUNDAY_EVENING) if each.day == TUESDAY]
    place = offered_place(wanted, AskedPlace(offer.van, offer.first, offer.last), SUNDAY_EVENING)
    assert place.moved == other.pk


def test_a_place_that_is_gone_is_not_found_again(house):
    nowhere = AskedPlace(987_654_321, at("10:00"), at("11:00"))
    assert offered_place(asked(house), nowhere, SUNDAY_EVENING) is None


def test_hours_for_a_farm_are_looked_for_only_where_told_ones_are_kept(house):
    with pytest.raises(ValueError, match="somebody else was told"):
        client_offers(asked_for(house.farm, urgent()), SUNDAY_EVENING)


def test_two_vans_that_can_come_at_the_same_time_are_one_offer(house):
    make_van(house.business, house.owner, "Van 2")
    found = client_offers(asked(house), SUNDAY_EVENING)
    starts = [offer.first for offer in found]
    assert len(found) == len({(start.date(), start.hour) for start in starts}) > 1
