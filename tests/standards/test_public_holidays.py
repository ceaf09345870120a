"""Public holidays against the lists that gov.uk publishes (from memory), and Easter by an algorithm of its own."""

from datetime import date, timedelta

import pytest

from trimops.kernel.public_holidays import public_holidays, regions_of

ENGLAND_2025 = ["01-01", "04-18", "04-21", "05-05", "05-26", "08-25", "12-25", "12-26"]
ENGLAND_2026 = ["01-01", "04-03", "04-06", "05-04", "05-25", "08-31", "12-25", "12-28"]
# gov.uk, bank holidays of the United Kingdom, as remembered in 2026; each year's list without the day that a substitute
# stands for, as gov.uk gives them.
GOV_UK = {
    ("ENG", 2025): ENGLAND_2025,
    ("WLS", 2025): ENGLAND_2025,
    ("ENG", 2026): ENGLAND_2026,
    ("WLS", 2026): ENGLAND_2026,
    ("SCT", 2025): ["01-01", "01-02", "04-18", "05-05", "05-26", "08-04", "12-01", "12-25", "12-26"],
    # 15 June: given once, for the World Cup
    ("SCT", 2026): ["01-01", "01-02", "04-03", "05-04", "05-25", "06-15", "08-03", "11-30", "12-25", "12-28"],
    ("NIR", 2025): [*ENGLAND_2025[:1], "03-17", *ENGLAND_2025[1:5], "07-14", *ENGLAND_2025[5:]],
    ("NIR", 2026): [*ENGLAND_2026[:1], "03-17", *ENGLAND_2026[1:5], "07-13", *ENGLAND_2026[5:]],
    # The jubilee moved the late May holiday; the late Queen's funeral was given within days.
    ("ENG", 2022): ["01-03", "04-15", "04-18", "05-02", "06-02", "06-03", "08-29", "09-19", "12-26", "12-27"],
    ("ENG", 2023): ["01-02", "04-07", "04-10", "05-01", "05-08", "05-29", "08-28", "12-25", "12-26"],
}


@pytest.mark.parametrize(("region", "year"), GOV_UK)
def test_the_days_of_the_kingdoms_parts_are_those_that_gov_uk_publishes(region, year):
    found = public_holidays("GB", region, date(year, 1, 1), date(year, 12, 31))
    # because: the list of gov.uk has the Monday instead of the Saturday or Sunday, the library has both
    weekdays = [f"{day:%m-%d}" for day in found if day.weekday() < 5]
    assert weekdays == GOV_UK[region, year]


def easter(year: int) -> date:
    """The Gregorian algorithm of Meeus, Jones and Butcher (from memory)."""
    a, b, c = year % 19, year // 100, year % 100
    d, e = divmod(b, 4)
    g = (8 * b + 13) // 25
    h = (19 * a + b - d - g + 15) % 30
    i, k = divmod(c, 4)
    j = (32 + 2 * e + 2 * i - h - k) % 7
    m = (a + 11 * h + 22 * j) // 451
    month, day = divmod(h + j - 7 * m + 114, 31)
    return date(year, month, day + 1)


@pytest.mark.parametrize("country", ["GB", "DE", "AU"])
def test_good_friday_is_two_days_before_easter_in_every_year(country):
    for year in range(2020, 2046):
        friday = easter(year) - timedelta(days=2)
        assert friday in public_holidays(country, "", friday, friday), year


@pytest.mark.parametrize(
    ("country", "region", "first", "last", "days"),
    [
        (
            "GB",
            "ENG",
            date(2026, 12, 24),
            date(2027, 1, 3),
            ["2026-12-25", "2026-12-26", "2026-12-28", "2027-01-01"],
        ),
        ("GB", "", date(2026, 4, 1), date(2026, 4, 10), ["2026-04-03"]),  # Easter Monday is none in Scotland
        ("GB", "XX", date(2026, 4, 1), date(2026, 4, 10), ["2026-04-03"]),
        ("DE", "BY", date(2026, 1, 6), date(2026, 1, 6), ["2026-01-06"]),
        ("DE", "BE", date(2026, 1, 6), date(2026, 1, 6), []),
        ("AU", "NSW", date(2026, 1, 26), date(2026, 1, 26), ["2026-01-26"]),
        ("ZZ", "", date(2026, 1, 1), date(2026, 12, 31), []),
        ("GB", "ENG", date(2028, 2, 28), date(2028, 3, 1), []),  # over a leap day
    ],
)
def test_days_are_found_between_years_and_in_parts_of_countries(country, region, first, last, days):
    assert [day.isoformat() for day in public_holidays(country, region, first, last)] == days


def test_parts_have_names_and_codes_that_fit_their_column():
    assert regions_of("GB") == {
        "ENG": "England",
        "NIR": "Northern Ireland",
        "SCT": "Scotland",
        "WLS": "Wales",
    }
    assert regions_of("DE")["BY"] == "Bayern"
    assert regions_of("ZZ") == {}
    assert all(len(code) <= 10 for country in ("BR", "FR", "US", "NZ") for code in regions_of(country))
