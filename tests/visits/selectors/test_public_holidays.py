"""A business works on public holidays or stays in, as it says, wherever it is."""

from datetime import UTC, date, datetime, timedelta

import pytest
from django.urls import reverse

from trimops.accounts.models import Business
from visits.models import DayOff
from visits.selectors.public_holidays import days_stayed_in, holidays_between
from visits.selectors.week_problem import week_problem

EASTER_MONDAY = date(2026, 4, 6)


def set_business(house, **fields):
    Business.objects.filter(pk=house.business.pk).update(**fields)
    house.business.refresh_from_db()


def days_of_week(house, monday):
    now = datetime.combine(monday - timedelta(days=3), datetime.min.time(), UTC)
    shifts = week_problem(house.business, monday, now)["shifts"]
    return [shift["id"].split("-", 2)[2] for shift in shifts]


@pytest.mark.parametrize(
    ("region", "works", "out"),
    [
        ("ENG", True, ["2026-04-06", "2026-04-07", "2026-04-08", "2026-04-09", "2026-04-10"]),
        ("ENG", False, ["2026-04-07", "2026-04-08", "2026-04-09", "2026-04-10"]),
        ("SCT", False, ["2026-04-06", "2026-04-07", "2026-04-08", "2026-04-09", "2026-04-10"]),
    ],
)
def test_no_van_goes_out_on_a_holiday_where_the_business_says_so(house, region, works, out):
    set_business(house, region=region, works_holidays=works)
    assert days_of_week(house, EASTER_MONDAY) == out


@pytest.mark.parametrize(
    ("country", "region", "monday", "closed"),
    [
        ("GB", "ENG", date(2026, 12, 28), {"2026-12-28", "2027-01-01"}),  # week 53, two years
        ("US", "", date(2026, 11, 23), {"2026-11-26"}),
        ("AU", "NSW", date(2026, 10, 5), {"2026-10-05"}),  # the day after its clock moved
        ("GB", "ENG", date(2028, 2, 28), set()),  # a week with a leap day
    ],
)
def test_weeks_at_the_edges_of_the_year_and_of_the_earth(house, country, region, monday, closed):
    set_business(house, country=country, region=region, works_holidays=False)
    every = {(monday + timedelta(days=day)).isoformat() for day in range(5)}
    assert every - set(days_of_week(house, monday)) == closed


def test_a_days_off_of_the_van_stays_beside_the_holiday(house):
    set_business(house, region="ENG", works_holidays=False)
    DayOff.objects.create(business=house.business, van=house.van, day=date(2026, 4, 7))
    assert days_of_week(house, EASTER_MONDAY)[0] == "2026-04-08"


def test_where_the_business_works_on_them_they_are_only_known(house):
    set_business(house, region="ENG")
    week = EASTER_MONDAY, EASTER_MONDAY + timedelta(days=6)
    assert holidays_between(house.business, *week) == {EASTER_MONDAY: "Easter Monday"}
    assert days_stayed_in(house.business, *week) == frozenset()


def test_the_week_says_which_day_is_a_holiday_and_what_the_vans_do(house, client):
    client.force_login(house.owner)
    address = reverse("this_week") + "?week=2026-04-06"
    set_business(house, region="ENG")
    assert "Monday 6 April is a public holiday: Easter Monday. The vans go out" in " ".join(
        client.get(address).content.decode().split()
    )
    set_business(house, works_holidays=False)
    assert "Nothing is planned for it." in client.get(address).content.decode()
    assert "public holiday" not in client.get(reverse("this_week") + "?week=2026-04-13").content.decode()


def test_the_owner_chooses_the_part_of_the_country(house, client):
    client.force_login(house.owner)
    words = {"name": "Ash", "payment_days": 14, "timezone": "Europe/London"}
    assert client.post(reverse("business"), {**words, "region": "SCT"}).status_code == 302
    house.business.refresh_from_db()
    assert (house.business.region, house.business.works_holidays) == ("SCT", False)
    assert client.post(reverse("business"), {**words, "region": "BY"}).status_code == 400
    set_business(house, country="ZZ")
    assert "region" not in client.get(reverse("business")).context["form"].fields
