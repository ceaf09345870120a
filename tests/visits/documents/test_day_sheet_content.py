"""The title of a day's sheet."""

from tests.visits.documents.sheet_days import day, stop


def test_the_title_says_farms_and_cows_of_the_day():
    assert day(stop("A", cows=1)).title == "Tuesday 1 December 2026: 1 farm, 1 cow"
    assert day(stop("A", cows=20), stop("B", cows=43)).title.endswith("2 farms, 63 cows")


def test_two_stops_at_one_farm_are_one_farm():
    assert day(stop("A", cows=2), stop("A", cows=30)).title.endswith("1 farm, 32 cows")
