from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.models import ReferenceRate
from invoicing.services.set_reference_rate import RateRefused, set_reference_rate
from tests.factories import make_house

JANUARY = date(2026, 1, 1)


def put(house, percent="4.25", source="The bank's page", day=JANUARY):
    return set_reference_rate(business=house.business, valid_from=day, percent=D(percent), source=source)


def test_a_second_rate_for_a_day_takes_the_place_of_the_first(house):
    put(house)
    put(house, "4.5")
    assert [row.percent for row in ReferenceRate.objects.within(house.scope)] == [D("4.5")]


def test_each_business_has_rates_of_its_own(house):
    put(house)
    stranger = make_house("Elsewhere Trimming")
    put(stranger, "1")
    assert ReferenceRate.objects.within(house.scope).get().percent == D("4.25")


def test_what_makes_no_sense_is_refused(house):
    for percent, source in (("4.25", " "), ("425", "The bank's page")):
        with pytest.raises(RateRefused):
            put(house, percent, source)
