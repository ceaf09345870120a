"""However many rows there are, an address of the work costs the same, and not much."""

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import blocked_foot, finish, make_cow, photo_of, put_down, under_way, wanted
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
