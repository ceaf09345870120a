"""Public holidays by country and region. What is known of them comes with the library `holidays` and its data."""

from collections.abc import Mapping
from datetime import date
from functools import cache

import holidays

MOST_REGION = 10


@cache
def regions_of(country: str) -> Mapping[str, str]:
    """Code (ISO 3166-2 without the country) -> name of each part that has holidays of its own; none where it has no
    such parts or nothing is known of the country (two letters of ISO 3166-1)."""
    if country not in holidays.list_supported_countries():
        return {}
    found = holidays.country_holidays(country)
    names = {code: name for name, code in found.subdivisions_aliases.items()}
    codes = [code for code in found.subdivisions if len(code) <= MOST_REGION]
    return dict(sorted(((code, names.get(code, code)) for code in codes), key=lambda part: part[1]))


def public_holidays(country: str, region: str, first: date, last: date) -> dict[date, str]:
    """The holidays from `first` to `last`, both among them, with their names as the country calls them.

    Without a region, and with one that the country does not have, those of the whole country. Nothing is known of some
    countries, and of governments that will give a day off next week.
    """
    years = range(first.year, last.year + 1)
    found = {day: name for year in years for day, name in _of_year(country, region, year).items()}
    return {day: found[day] for day in sorted(found) if first <= day <= last}


@cache
def _of_year(country: str, region: str, year: int) -> Mapping[date, str]:
    if country not in holidays.list_supported_countries():
        return {}
    part = region if region in regions_of(country) else None
    return dict(holidays.country_holidays(country, subdiv=part, years=year).items())
