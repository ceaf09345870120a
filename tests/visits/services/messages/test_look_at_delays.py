"""Which vans are looked at."""

from datetime import timedelta

from tests.factories import TUESDAY_TEN, finish, make_house, make_van, planned, under_way
from tests.visits.services.messages.told_farms import errands, switch_on
from trimops.jobs import Job
from visits.domain.messages.message_kinds import MessageKind
from visits.services.messages.look_at_delays import look_at_delays

HOUR = timedelta(hours=1)


def test_a_van_under_way_with_another_farm_ahead_is_looked_at(house):
    switch_on(house, MessageKind.LATE)
    under_way(house.farm, house.van, TUESDAY_TEN)
    assert look_at_delays(at=TUESDAY_TEN) == 0
    planned(house.farm, house.van, TUESDAY_TEN + 3 * HOUR)
    assert look_at_delays(at=TUESDAY_TEN + HOUR) == 1
    assert [row.ids for row in errands(house, Job.TELL_DELAYS)] == [{"van_id": house.van.pk}]


def test_between_two_farms_it_is_looked_at_too(house):
    switch_on(house, MessageKind.LATE)
    finish(under_way(house.farm, house.van, TUESDAY_TEN), house.trimmer, TUESDAY_TEN + HOUR)
    planned(house.farm, house.van, TUESDAY_TEN + 3 * HOUR)
    assert look_at_delays(at=TUESDAY_TEN + 2 * HOUR) == 1


def test_vans_at_home_of_yesterday_and_of_who_wants_no_such_message_are_not(house):
    other = make_house("Elm Hoof Care")
    under_way(other.farm, other.van, TUESDAY_TEN)
    planned(other.farm, other.van, TUESDAY_TEN + 3 * HOUR)
    switch_on(other, MessageKind.BOOKED)
    switch_on(house, MessageKind.LATE)
    under_way(house.farm, house.van, TUESDAY_TEN - 30 * HOUR)
    planned(house.farm, make_van(house.business, house.trimmer, "Van 2"), TUESDAY_TEN + 3 * HOUR)
    planned(house.farm, house.van, TUESDAY_TEN + 3 * HOUR)
    assert look_at_delays(at=TUESDAY_TEN) == 0
