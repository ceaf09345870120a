"""Many cows at once are kept exactly as one by one."""

from datetime import date

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from farms.domain.electronic_id import NotAnElectronicId
from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Cow, CowIdentity
from farms.services.refuse_erased import FarmIsErased
from farms.services.save_cow import save_cow
from farms.services.save_cows import CowWord, save_cows
from tests.factories import NOON, make_cow, make_farm

TAG, CHIP = IdentityKind.OFFICIAL_TAG, IdentityKind.ELECTRONIC_ID


def words_for(farm):
    """A new cow with all there is, a bare one, one that is sold, and a known one put right."""
    known = make_cow(farm, "77")
    save_cow(cow=known, identities={TAG: "UK 123450 600001"}, lactation=2, at=NOON)
    known.calved_on = date(2026, 1, 5)
    save_cow(cow=known, lactation=2)
    known.calved_on, known.note = date(2026, 1, 6), "kicks"
    new = [Cow(business=farm.business, farm=farm, number=number) for number in ("1", "2", "3")]
    new[0].calved_on, new[2].status = date(2025, 12, 1), "sold"
    return [
        CowWord(new[0], {TAG: "UK 123450 600002", CHIP: "826 123450600001"}, 3),
        CowWord(new[1], {TAG: ""}),
        CowWord(new[2]),
        CowWord(known, {TAG: ""}, None),
    ]


def told(farm):
    scope = farm.scope
    names = ("number", "status", "calved_on", "entered_on", "left_on", "note")
    return (
        sorted(map(str, Cow.objects.within(scope).filter(farm=farm).values_list(*names))),
        sorted(
            map(
                str,
                Calving.objects.within(scope)
                .filter(cow__farm=farm)
                .values_list("cow__number", "calved_on", "lactation"),
            )
        ),
        sorted(
            CowIdentity.objects.within(scope)
            .filter(cow__farm=farm)
            .values_list("cow__number", "kind", "value")
        ),
    )


def test_many_at_once_are_as_one_by_one(house):
    at_once, by_one = (make_farm(house.business, name, by=house.owner) for name in ("At once", "By one"))
    save_cows(farm=at_once, words=words_for(at_once), at=NOON)
    for word in words_for(by_one):
        save_cow(cow=word.cow, identities=word.identities, lactation=word.lactation, at=NOON)
    assert told(at_once) == told(by_one)
    assert len(told(at_once)[0]) == 4


def test_a_hundred_cost_hardly_more_queries_than_ten(house):
    def cost(count):
        farm = make_farm(house.business, f"Farm of {count}", by=house.owner)
        words = [
            CowWord(
                Cow(business=house.business, farm=farm, number=str(n), calved_on=date(2026, 1, 1)),
                {TAG: f"UK{n:012d}"},
                1,
            )
            for n in range(count)
        ]
        with CaptureQueriesContext(connection) as asked:
            save_cows(farm=farm, words=words, at=NOON)
        return len(asked)

    ten, hundred = cost(10), cost(100)
    assert ten < 20
    assert hundred < ten + 5  # a database takes only so many rows in one statement


def test_one_fault_keeps_all_of_them_out(house):
    words = words_for(house.farm)
    before = told(house.farm)
    words[2].identities[CHIP] = "12"
    with pytest.raises(NotAnElectronicId):
        save_cows(farm=house.farm, words=words, at=NOON)
    assert told(house.farm) == before


def test_nothing_is_put_down_for_an_erased_farm(house):
    house.farm.erased_at = NOON
    with pytest.raises(FarmIsErased):
        save_cows(farm=house.farm, words=[], at=NOON)
