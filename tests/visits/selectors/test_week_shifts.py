"""The shifts of a week, cut by own appointments."""

from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import MONDAY, NOON, confirmed, make_house, make_van
from tests.visits.documents.own_calendar import DENTIST, HOLIDAY, calendar
from tests.visits.own_calendars import own_calendar
from tests.visits.services.offers import offers
from visits.models import OutBecause, VanOut
from visits.selectors.week_problem import week_problem
from visits.selectors.week_shifts import shifts_of, vans_of
from visits.services.save_van import set_day_off

pytestmark = pytest.mark.django_db
SUNDAY = datetime(2026, 3, 1, 19, tzinfo=UTC)


@pytest.fixture
def house():
    return make_house()


def shifts(house, monday=MONDAY):
    found = shifts_of(vans_of(house.scope), house.scope, monday, SUNDAY, house.business)
    return {str(each["id"]): (str(each["start"])[11:16], str(each["end"])[11:16]) for each in found}


def tuesday(house, van=None):
    return shifts(house).get(f"van-{(van or house.van).pk}-2026-03-03")


def busy(begin, end):
    return f"DTSTART:20260303T{begin}00Z\nDTEND:20260303T{end}00Z"


def test_the_day_without_appointments_is_the_vans_own(house):
    assert tuesday(house) == ("08:00", "17:00")


@pytest.mark.parametrize(
    ("entries", "left"),
    [
        ([busy("0930", "1100")], ("11:00", "17:00")),
        ([busy("1500", "1600")], ("08:00", "15:00")),
        ([busy("1600", "1900")], ("08:00", "16:00")),
        ([busy("0500", "0800")], ("08:00", "17:00")),
        # Two that are each of one half: the middle is the longest.
        ([busy("0900", "0930"), busy("1630", "1730")], ("09:30", "16:30")),
        # The longest after the first is not the longest after both.
        ([busy("1000", "1030"), busy("1245", "1400")], ("14:00", "17:00")),
        ([busy("0700", "1530")], None),
        ([busy("0700", "1444")], ("14:44", "17:00")),
        ([busy("0600", "1800")], None),
        ([busy("0900", "0929")], ("08:00", "17:00")),
        (["DTSTART;VALUE=DATE:20260303"], None),
        (["DTSTART;VALUE=DATE:20260303\nTRANSP:TRANSPARENT"], ("08:00", "17:00")),
    ],
)
def test_appointments_cut_it(house, entries, left):
    own_calendar(house, calendar(*entries))
    assert tuesday(house) == left


def test_where_only_whole_days_count_hours_do_not(house):
    own_calendar(house, calendar(busy("0930", "1100"), HOLIDAY), only_whole_days=True)
    assert tuesday(house) == ("08:00", "17:00")
    away = {f"van-{house.van.pk}-2026-03-{day}" for day in (10, 11, 12)}
    assert not away & set(shifts(house, MONDAY + timedelta(days=7)))


def test_a_confirmed_visit_keeps_its_piece_of_the_day(house):
    own_calendar(house, calendar(busy("1100", "1200")))
    assert tuesday(house) == ("12:00", "17:00")
    confirmed(house.farm, house.van, datetime(2026, 3, 3, 8, 30, tzinfo=UTC), head_count=2)
    assert tuesday(house) == ("08:00", "11:00")


def test_only_the_van_of_the_calendar_stays_in(house):
    second = make_van(house.business, house.trimmer, "Second van")
    own_calendar(house, calendar(DENTIST))
    own_calendar(make_house("another"), calendar(busy("0700", "1730")))
    assert tuesday(house) == ("11:00", "17:00")
    assert tuesday(house, second) == ("08:00", "17:00")


def test_it_stands_beside_days_off_and_hours_out_of_action(house):
    own_calendar(house, calendar(busy("0930", "1100")))
    VanOut.objects.create(
        business=house.business,
        van=house.van,
        since=datetime(2026, 3, 3, 15, tzinfo=UTC),
        until=datetime(2026, 3, 3, 20, tzinfo=UTC),
        because=OutBecause.VAN,
        noted_at=NOON,
        noted_by=house.owner,
    )
    assert tuesday(house) == ("11:00", "15:00")
    set_day_off(van=house.van, day=datetime(2026, 3, 3, tzinfo=UTC).date(), reason="", is_off=True, at=NOON)
    assert tuesday(house) is None


def test_the_planner_and_the_offers_go_by_it(house):
    before = offers(house.farm)
    days = {line.day for line in before.fits}
    assert datetime(2026, 3, 5, tzinfo=UTC).date() in days
    own_calendar(house, calendar("DTSTART;VALUE=DATE:20260305"))
    problem = week_problem(house.business, MONDAY, SUNDAY)
    assert f"van-{house.van.pk}-2026-03-05" not in {shift["id"] for shift in problem["shifts"]}
    assert datetime(2026, 3, 5, tzinfo=UTC).date() not in {line.day for line in offers(house.farm).fits}
