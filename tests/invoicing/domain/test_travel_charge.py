from decimal import Decimal as D

import pytest
from hypothesis import given
from hypothesis import strategies as st

from invoicing.domain.travel_charge import Band, DistanceUnit, TravelRule, band_of, in_unit, shares_of_round

BANDS = (Band(None, D(40)), Band(D(10), D(0)), Band(D(25), D(15)))


def test_every_member_has_words_of_its_own():
    for kind in (TravelRule, DistanceUnit):
        assert len({member.label for member in kind}) == len(kind)
    assert DistanceUnit.MILE.short == "miles"


@pytest.mark.parametrize(
    ("km", "unit", "expected"),
    # 16.09344 km are ten miles exactly
    [("12.34", "KMT", "12.3"), ("12.35", "KMT", "12.4"), ("16.09344", "SMI", "10.0"), ("0", "SMI", "0")],
)
def test_kilometres_in_the_unit_charged(km, unit, expected):
    assert in_unit(D(km), DistanceUnit(unit)) == D(expected)


@pytest.mark.parametrize(
    ("distance", "price"), [("0", "0"), ("10", "0"), ("10.1", "15"), ("25", "15"), ("25.1", "40")]
)
def test_the_nearest_band_that_reaches_so_far(distance, price):
    assert band_of(D(distance), BANDS).price == D(price)


def test_beyond_all_bands_there_is_none():
    assert band_of(D(26), BANDS[1:]) is None


@pytest.mark.parametrize(
    ("cost", "ways", "shares"),
    [
        ("32.40", ["20", "40", "60"], ["5.40", "10.80", "16.20"]),
        ("31.55", ["20", "40", "60"], ["5.26", "10.52", "15.77"]),
        ("10.00", ["1", "1", "1"], ["3.33", "3.34", "3.33"]),
        ("0.03", ["1", "1", "1", "1", "1"], ["0.01", "0.00", "0.01", "0.00", "0.01"]),
        ("10.00", ["0", "0"], ["5.00", "5.00"]),
        ("10.00", ["7"], ["10.00"]),
    ],
)
def test_a_round_is_shared_by_hand(cost, ways, shares):
    assert shares_of_round(D(cost), [D(way) for way in ways]) == [D(share) for share in shares]


@given(
    st.decimals(0, 500, places=2),
    st.lists(st.decimals(0, 200, places=1), min_size=1, max_size=12),
)
def test_shares_add_up_and_none_is_negative(cost, ways):
    shares = shares_of_round(cost, ways)
    assert sum(shares) == cost
    assert min(shares) >= 0
