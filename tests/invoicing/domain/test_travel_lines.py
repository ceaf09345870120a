from decimal import Decimal as D

import pytest

from invoicing.domain.pricing import NoPrice, PriceItem
from invoicing.domain.travel_charge import Band, DistanceUnit, Travelled, TravelRule, TravelTerms
from invoicing.domain.travel_lines import distance_item, travel_charge
from tests.invoicing.domain.small_book import book, visit

WAY = Travelled(D("10"), D("20.04"), "by the road map", D("70.1"), (D("20.04"), D(40), D(60)), 0)
MILES, KM = DistanceUnit.MILE, DistanceUnit.KILOMETRE
BANDS = (Band(D(5), D(8)), Band(D(15), D(16)))


def charged(rule, way=WAY, unit=KM, bands=BANDS, **prices):
    terms = TravelTerms(TravelRule(rule), unit, bands)
    return travel_charge(visit(), book({"kilometre": "0.45", **prices}, travel=terms), way)


def test_by_distance_there_and_back():
    found = charged("distance")
    assert (found.item, found.quantity, found.amount) == (PriceItem.KILOMETRE, D("20.0"), None)
    assert found.why == "from the base and back, by the road map"
    assert found.keys[0].endswith("/travel")


def test_by_distance_in_miles():
    found = charged("distance", unit=MILES, mile="0.70")
    assert (found.item, found.quantity) == (PriceItem.MILE, D("12.5"))  # 20.04 km / 1.609344
    assert distance_item(MILES) is PriceItem.MILE


def test_by_band_of_the_way_one_way():
    found = charged("band")
    assert (found.item, found.quantity, found.amount) == (PriceItem.TRAVEL, 1, D(16))
    assert found.why == "10.0 km from the base, by the road map: band up to 15 km"
    beyond = charged("band", bands=(*BANDS[:1], Band(None, D(40))))
    assert (beyond.amount, beyond.why.split(": ")[1]) == (D(40), "beyond the other bands")


def test_farther_than_every_band_stops_the_draft():
    with pytest.raises(NoPrice, match=r"reaches 10\.0 km"):
        charged("band", bands=BANDS[:1])


def test_a_round_of_three_farms_shared():
    """The worked day. From the base Low Croft is 10 km, High Croft 20, Far End 30 (so 20, 40 and 60 there and back, 120
    in all). The van's round, base - Low - High - Far - base, is 70.1 km. At 0.45 a kilometre it costs 31.545, so 31.55.
    Low pays 20/120 of it: 5.2583, so 5.26. Low and High 60/120: 15.775, so 15.78, of which High 10.52. Far End pays
    what is left, 15.77 (its exact share is 15.7725). 5.26 + 10.52 + 15.77 = 31.55.
    """
    ways = (D(20), D(40), D(60))
    found = [charged("shared", Travelled(D(1), ways[n], "estimated", D("70.1"), ways, n)) for n in range(3)]
    assert [one.amount for one in found] == [D("5.26"), D("10.52"), D("15.77")]
    assert sum(one.amount for one in found) == D("31.55")
    assert found[0].why == (
        "share of the day's round of 3: 70.1 km cost 31.55, "
        "shared by the way to each and back, 20.0 of 120.0 km; estimated"
    )


def test_no_rule_or_no_way_is_no_charge():
    assert charged("none") is None
    assert charged("distance", Travelled(D(0), D("0.04"), "estimated")) is None


def test_a_shared_round_needs_the_price_of_a_kilometre():
    with pytest.raises(NoPrice, match="Travel"):
        charged("shared", unit=MILES)
