"""A farm does not want the hour: anybody may have it."""

import pytest

from tests.factories import make_farm
from tests.visits.services.offers import HALF_AN_HOUR, SUNDAY_EVENING, hold, offers
from visits.services.let_go_offer import HourIsNotHeld, let_go_offer


@pytest.fixture
def held(house):
    return hold(house, offers(house.farm).fits[0])


def spans(farm):
    return [(line.van, line.first, line.last) for line in offers(farm).fits]


def test_the_hour_is_free_again(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    before = spans(other)
    held = hold(house, offers(house.farm).fits[0])
    assert spans(other) != before
    row = let_go_offer(held=held, at=SUNDAY_EVENING)
    assert spans(other) == before
    assert (row.state, row.ended_at) == ("let_go", SUNDAY_EVENING)


def test_it_is_let_go_once(held):
    let_go_offer(held=held, at=SUNDAY_EVENING)
    with pytest.raises(HourIsNotHeld, match="is let go"):
        let_go_offer(held=held, at=SUNDAY_EVENING)


def test_what_has_run_out_cannot_be_let_go(held):
    with pytest.raises(HourIsNotHeld, match="has run out"):
        let_go_offer(held=held, at=SUNDAY_EVENING + HALF_AN_HOUR)
