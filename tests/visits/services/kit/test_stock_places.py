"""Every place there is, made where it is missing."""

import pytest

from tests.factories import make_house, make_van
from visits.models import StockPlace
from visits.services.kit.stock_places import stock_places_of


@pytest.mark.django_db
def test_the_store_and_each_van_that_goes_out(django_assert_num_queries):
    house = make_house()
    make_van(house.business, house.trimmer, "Van 2")
    old = make_van(house.business, house.trimmer, "Old van")
    old.is_active = False
    old.save()
    assert [place.name for place in stock_places_of(house.scope)] == ["Store", "Van 1", "Van 2"]
    with django_assert_num_queries(2):
        assert len(stock_places_of(house.scope)) == 3
    assert StockPlace.objects.within(make_house("Other").scope).count() == 0
