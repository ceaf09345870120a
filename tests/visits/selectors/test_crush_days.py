from datetime import UTC, datetime, timedelta

from tests.factories import TUESDAY_TEN, confirmed, make_house, make_member, make_van, planned, under_way
from trimops.accounts.roles import Role
from visits.selectors.crush_days import crush_days

MORNING = datetime(2026, 3, 3, 6, tzinfo=UTC)
DAY = timedelta(days=1)


def days_of(house, by=None, now=MORNING):
    return crush_days(house.scope, by=by or house.trimmer, now=now, zone=house.business.zone)


def ids_of(house, by=None, now=MORNING):
    return [line["id"] for line in days_of(house, by, now)]


def test_todays_and_tomorrows_are_told_in_the_order_of_their_hours(house):
    tomorrow = confirmed(house.farm, house.van, TUESDAY_TEN + DAY)
    today = planned(house.farm, house.van)
    planned(house.farm, house.van, TUESDAY_TEN + 2 * DAY)
    assert ids_of(house) == [today.pk, tomorrow.pk]
    assert days_of(house)[0] == {
        "id": today.pk,
        "farm": "Low Croft",
        "day": "2026-03-03",
        "state": "planned",
        "planned_start": "2026-03-03T10:00:00+00:00",
        "planned_finish": today.planned_finish.isoformat(),
        "head_count": 12,
    }


def test_a_visit_left_under_way_is_told_however_old(house):
    left = under_way(house.farm, house.van, TUESDAY_TEN - 5 * DAY)
    assert ids_of(house) == [left.pk]


def test_a_driver_is_told_of_the_own_vans_and_the_others_of_all(house):
    other = make_van(house.business, make_member(house.business, Role.TRIMMER).user, "Van 2")
    mine, theirs = planned(house.farm, house.van), planned(house.farm, other)
    assert ids_of(house) == [mine.pk]
    assert ids_of(house, house.owner) == [mine.pk, theirs.pk]


def test_another_business_s_visits_are_not_told(house):
    foreign = make_house("Other")
    planned(foreign.farm, foreign.van)
    assert ids_of(house, house.owner) == []


def test_the_day_turns_at_midnight_in_the_zone_of_the_business(house):
    june = datetime(2026, 6, 2, 23, 30, tzinfo=UTC)  # half past midnight of the third, by the farm's clock
    late = planned(house.farm, house.van, datetime(2026, 6, 4, 22, 30, tzinfo=UTC))
    assert ids_of(house, now=june) == [late.pk]
    assert ids_of(house, now=june - DAY) == []
