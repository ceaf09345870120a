"""However many rows there are, an address of the work costs the same, and not much."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import (
    NOON,
    blocked_foot,
    finish,
    make_cow,
    make_kit,
    photo_of,
    put_down,
    stock_up,
    under_way,
    wanted,
)
from tests.visits.api.caller import Caller

MOST = 12
# What reckons a draft list or a herd asks all that is known of a farm's cows; the same for three and for six hundred.
RECKONED = 40


def fill(house, cows):
    """A finished visit with so many cows, papers and photos, and so many wishes."""
    visit = under_way(house.farm, house.van)
    for number in range(cows):
        trim = put_down(visit, make_cow(house.farm, f"{cows}{number}"), blocked_foot(for_vet="Hot"))
        photo_of(trim)
        wanted(house.farm)
    return visit, trim


def counted(caller, address):
    caller.get(address)
    with CaptureQueriesContext(connection) as found:
        answer = caller.get(address)
    assert answer.status_code == 200, answer.content
    return len(found)


ADDRESSES = [
    ("/visits/", MOST),
    ("/visits/{visit}/trims/", MOST),
    ("/visits/{visit}/photos/", MOST),
    ("/cows/{cow}/trims/", MOST),
    ("/cows/{cow}/versions/", MOST),
    ("/trims/{trim}/", MOST),
    ("/rechecks/", MOST),
    ("/blocks/", MOST),
    ("/visits/{visit}/uses/", MOST),
    ("/visits/{visit}/", MOST),
    ("/visits/{wanted}/", RECKONED),
    ("/visits/{wanted}/draft/", RECKONED),
    ("/farms/{farm}/herd-figures/", MOST),
]


@pytest.mark.parametrize(("address", "most"), ADDRESSES)
def test_more_rows_cost_no_more(house, address, most):
    found = []
    for cows in (2, 5):
        visit, trim = fill(house, cows)
        wish = wanted(house.farm)
        names = {
            "visit": visit.pk,
            "trim": trim.pk,
            "cow": trim.cow_id,
            "farm": house.farm.pk,
            "wanted": wish.pk,
        }
        found.append(counted(Caller(house.office), address.format(**names)))
        finish(visit, house.trimmer)
    assert found[0] == found[1]
    assert found[1] <= most, found


# What the forecast learns from takes eight questions, the ledger four, blades and lots five each.
@pytest.mark.parametrize(("address", "most"), [("/kit/order-list/", 20), ("/kit/tonight/", 42)])
def test_more_of_the_kit_costs_no_more(house, address, most):
    wood = make_kit(house.business)["wood"]
    found = []
    for cows in (2, 5):
        visit, _ = fill(house, cows)
        stock_up(wood, cows, at=NOON)
        found.append(counted(Caller(house.office), address))
        finish(visit, house.trimmer)
    assert found[0] == found[1]
    assert found[1] <= most, found
