"""Which fields a farm client is not told, measured at every address that both may read (ASVS 8.1.2, 8.2.3)."""

from collections.abc import Iterator

import pytest
from django.db import transaction
from django.test import Client
from django.urls import reverse

from farms.models import Farm, FarmAccess, Payer
from tests.factories import NOON
from tests.walls.fields_of_staff import ALWAYS, LISTS, PAGE, WITH_A_RIGHT, table, written
from tests.walls.routes import API
from trimops.accounts.actions import MAY
from trimops.accounts.roles import FarmRight, Role
from visits.models import HeldHour, IssuedReport, Visit, VisitEvent

# What lies empty in the furnished house is filled, else nobody could see that it is left out.
FARM = {"access_notes": "Dogs.", "hygiene_reason": "An outbreak.", "vat_number": "GB1"}
VISIT = {
    "asked_by": "A", "note": "B", "called_off_because": "C", "hygiene_note": "D", "signed_by": "E", "was_done": "F",
    "farm_to_do": "G",
}  # fmt: skip
SHOWN = [
    name for name, route in API.items() if "get" in route.does and Role.FARM in MAY[route.does["get"]].roles
]


@pytest.fixture
def filled(mine, db):
    """The furnished house with all rights at the farm, taken back afterwards."""
    scope = mine.house.scope
    with transaction.atomic():
        Farm.objects.within(scope).update(**FARM)
        Visit.objects.within(scope).update(**VISIT)
        VisitEvent.objects.within(scope).update(note="H")
        visit = Visit.objects.within(scope).first()
        HeldHour.objects.within(scope).update(
            note="I", moved_visit=visit, moved_van=mine.house.van, moved_start=NOON
        )
        IssuedReport.objects.within(scope).update(mailed_to=["vet@practice.example"])
        Farm.objects.within(scope).update(payer=Payer.objects.within(scope).first())
        yield mine
        transaction.set_rollback(True)


def client_of(user):
    client = Client()
    client.force_login(user)
    return client


def measured(house, names=SHOWN) -> dict[str, set[str]]:
    """Address -> paths of the fields that have a value for the owner and none for a farm client."""
    staff, farm, found = client_of(house.house.owner), client_of(house.house.client), {}
    for name in names:
        address = reverse(name, kwargs=API[name].parts(house.keys))
        whole, told = staff.get(address), farm.get(address)
        is_json = whole.headers.get("Content-Type") == "application/json" == told.headers.get("Content-Type")
        if whole.status_code == told.status_code == 200 and is_json:
            found[name] = set(hidden(whole.json(), told.json()))
    return found


def hidden(whole, told, where="") -> Iterator[str]:
    if isinstance(whole, dict) and isinstance(told, dict):
        for key, value in whole.items():
            yield from hidden(value, told.get(key), f"{where}.{key}".lstrip("."))
    elif isinstance(whole, list) and isinstance(told, list):
        for one, other in pairs(whole, told):
            yield from hidden(one, other, where)
    elif told is None and whole not in (None, "", [], {}):
        yield where


def pairs(whole, told):
    """The same row as both see it: by its id where it has one, for a farm client sees fewer."""
    if all(isinstance(row, dict) and "id" in row for row in (*whole, *told)):
        known = {row["id"]: row for row in told}
        return [(row, known[row["id"]]) for row in whole if row["id"] in known]
    return list(zip(whole, told, strict=False)) if len(whole) == len(told) else []


def test_a_farm_client_is_not_told_what_the_table_says_and_told_all_else(filled):
    every = measured(filled)
    FarmAccess.objects.within(filled.house.scope).update(**{right.value: False for right in FarmRight})
    none = measured(filled)
    assert len(every) > 25
    assert {name: paths for name, paths in every.items() if paths} == told_of(ALWAYS)
    less = {name: paths - every[name] for name, paths in none.items() if paths - every[name]}
    assert less == told_of({address: fields for address, (_, fields) in WITH_A_RIGHT.items()})


@pytest.mark.parametrize("address", WITH_A_RIGHT)
def test_the_right_that_the_table_names_is_the_one_that_opens_them(filled, address):
    right, fields = WITH_A_RIGHT[address]
    others = {each.value: each is not right for each in FarmRight}
    for rights, is_hidden in ((others, True), ({right.value: True}, False)):
        FarmAccess.objects.within(filled.house.scope).update(**rights)
        seen = measured(filled, [address])[address]
        assert (fields <= seen) is is_hidden
        assert bool(fields & seen) is is_hidden


def told_of(declared):
    """The lists show what the rows show."""
    lists = {
        LISTS[name]: {f"items.{each}" for each in fields if "." not in each}
        for name, fields in declared.items()
        if name in LISTS
    }
    return declared | lists


def test_developers_md_shows_the_table():
    assert written(PAGE.read_text()) == table(), "python -m tests.walls.fields_of_staff"
