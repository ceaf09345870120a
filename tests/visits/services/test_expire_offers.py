from datetime import timedelta

from tests.factories import make_farm
from tests.visits.services.offers import HALF_AN_HOUR, SUNDAY_EVENING, held_rows, hold, offers
from visits.services.expire_offers import expire_offers


def test_those_whose_time_is_up_are_marked_with_their_own_moment(house):
    first = hold(house, offers(house.farm).fits[0])
    later = SUNDAY_EVENING + timedelta(minutes=20)
    second = hold(house, offers(make_farm(house.business, "High Croft", by=house.owner)).fits[0], now=later)
    assert expire_offers(scope=house.scope, at=SUNDAY_EVENING + HALF_AN_HOUR) == 1
    states = dict(held_rows(house.scope).values_list("pk", "state"))
    assert states == {first.pk: "expired", second.pk: "held"}
    assert held_rows(house.scope).get(pk=first.pk).ended_at == first.until


def test_doing_it_twice_changes_nothing(house):
    hold(house, offers(house.farm).fits[0])
    at = SUNDAY_EVENING + HALF_AN_HOUR
    assert (expire_offers(scope=house.scope, at=at), expire_offers(scope=house.scope, at=at)) == (1, 0)
