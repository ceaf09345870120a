"""Cows by the API: found by any of their numbers, added one by one and a thousand at once, herd lists."""

import base64

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from farms.models import Cow
from tests.factories import make_cow, make_farm, make_house
from tests.visits.api.caller import code_of

CHIP = "826123450600001"
COW = {"number": "12", "official_tag": "UK 123450 600012", "electronic_id": CHIP, "calved_on": "2026-01-05"}


@pytest.fixture
def cows(house):
    return f"/farms/{house.farm.pk}/cows/"


def numbers(answer):
    return [row["number"] for row in answer.json()["items"]]


def test_a_cow_is_kept_with_her_marks_and_her_calving(office, cows, house):
    made = office.post(cows, {**COW, "lactation": 3})
    assert made.status_code == 201
    told = made.json()
    assert (told["farm"], told["official_tag"], told["electronic_id"]) == (
        house.farm.pk,
        "UK123450600012",
        CHIP,
    )
    assert told["calvings"] == [{"calved_on": "2026-01-05", "lactation": 3}]
    at = made["Location"].removeprefix("/api/v1")
    changed = office.patch(at, {"official_tag": "", "status": "dry"}, match=made["ETag"])
    assert (changed.status_code, changed.json()["official_tag"], changed.json()["status"]) == (200, "", "dry")
    assert changed.json()["electronic_id"] == CHIP
    assert office.patch(at, {"status": "milking"}, match=made["ETag"]).status_code == 412
    calved = office.post(f"{at}calvings/", {"calved_on": "2026-01-06", "lactation": 3})
    assert calved.json()["calvings"] == [{"calved_on": "2026-01-06", "lactation": 3}]
    assert office.get(at).json()["calvings"] == calved.json()["calvings"]


def test_cows_are_found_by_any_of_their_numbers(office, cows, house):
    office.post(cows, COW)
    other = make_cow(make_farm(house.business, "High", by=house.owner), "12")
    Cow.objects.within(house.scope).filter(pk=house.cow.pk).update(status="sold")
    for query, found in (
        ("number=12", ["12"]),
        ("official_tag=UK123450%20600012", ["12"]),
        (f"electronic_id={CHIP}", ["12"]),
        ("known_as=600012", ["12"]),
        ("status=sold", ["101"]),
        ("is_on_farm=true", ["12"]),
        ("is_on_farm=false", ["101"]),
        ("official_tag=UK1", []),
    ):
        assert numbers(office.get(f"{cows}?{query}")) == found, query
    assert len(numbers(office.get("/cows/?number=12"))) == 2
    assert numbers(office.get(f"/cows/?farm={other.farm_id}")) == ["12"]


def test_a_farm_client_sees_the_cows_of_their_farm_and_changes_none(client_of_farm, cows, house):
    foreign = make_cow(make_farm(house.business, "High", by=house.owner), "12")
    assert numbers(client_of_farm.get("/cows/")) == ["101"]
    assert client_of_farm.get(f"/cows/{foreign.pk}/").status_code == 404
    assert client_of_farm.post(cows, COW).status_code == 403


@pytest.mark.parametrize(
    ("said", "field"),
    [
        ({"electronic_id": "12"}, "electronic_id"),
        ({"left_on": "2026-01-05"}, "left_on"),
        ({"lactation": 2}, "lactation"),
        ({"born_on": "0001-01-01"}, "born_on"),
        ({"number": "  "}, "number"),
    ],
)
def test_what_cannot_be_of_a_cow_is_told_with_its_place(office, cows, house, said, field):
    one = office.post(cows, {"number": "5", **said})
    many = office.post(f"{cows}bulk/", {"rows": [{"number": "4"}, {"number": "5", **said}]})
    assert (one.status_code, many.status_code) == (422, 422)
    assert [one.json()["faults"][0]["field"], many.json()["faults"][0]["field"]] == [
        field,
        f"rows[1].{field}",
    ]
    assert Cow.objects.within(house.scope).count() == 1


def test_many_cows_are_added_and_changed_at_once_or_not_at_all(office, cows, house):
    rows = [{**COW, "lactation": 2}, {"number": "13"}, {"id": house.cow.pk, "status": "dead"}]
    kept = office.post(f"{cows}bulk/", {"rows": rows})
    assert kept.status_code == 200
    new, bare, known = kept.json()["rows"]
    assert (new["official_tag"], new["calvings"][0]["lactation"]) == ("UK123450600012", 2)
    assert (bare["number"], known["id"], known["status"], known["number"]) == (
        "13",
        house.cow.pk,
        "dead",
        "101",
    )
    assert known["left_on"] is not None


def test_a_row_names_a_cow_of_the_farm_once(office, cows, house):
    foreign = make_house("Other").cow.pk
    elsewhere = make_cow(make_farm(house.business, "High", by=house.owner), "12").pk
    for keys, fault in (
        ([foreign], "rows[0].id"),
        ([elsewhere], "rows[0].id"),
        ([house.cow.pk] * 2, "rows[0].id"),
    ):
        refused = office.post(f"{cows}bulk/", {"rows": [{"id": key, "number": "9"} for key in keys]})
        assert (refused.status_code, refused.json()["faults"][0]["field"]) == (422, fault)
    refused = office.post(
        f"{cows}bulk/", {"rows": [{"id": house.cow.pk, "number": "1", "left_on": "2026-01-05"}]}
    )
    assert refused.json()["faults"][0]["field"] == "rows[0].left_on"


def test_a_thousand_cows_are_kept_in_a_few_dozen_queries(office, cows, house):
    rows = [{"number": str(n), "official_tag": f"UK{n:012d}", "calved_on": "2026-01-05"} for n in range(1000)]
    with CaptureQueriesContext(connection) as asked:
        kept = office.post(f"{cows}bulk/", {"rows": rows})
    assert (kept.status_code, len(kept.json()["rows"])) == (200, 1000)
    assert len(asked) < 90
    assert office.post(f"{cows}bulk/", {"rows": [*rows, rows[0]]}).status_code == 400
    assert office.post(f"{cows}bulk/", {"rows": []}).status_code == 400


def test_a_herd_list_is_looked_at_and_then_applied(office, house):
    lists = f"/farms/{house.farm.pk}/herd-lists/"
    text = b"number,official tag,colour\n101,UK123450600001,red\n900,UK123450700002,\n,,blue\n"
    word = {"file_name": "herd.csv", "content": base64.b64encode(text).decode()}
    made = office.post(lists, word)
    told = made.json()
    assert made.status_code == 201
    assert ([each["number"] for each in told["new"]], told["changed"][0]["cow"]) == (["900"], house.cow.pk)
    assert (told["refused"][0]["line"], told["unknown_headings"]) == (4, ["colour"])
    assert Cow.objects.within(house.scope).count() == 1
    at = made["Location"].removeprefix("/api/v1")
    done = office.post(f"{at}apply/")
    assert done.json()["outcome"] == {"new": 1, "changed": 1, "unchanged": 0, "refused": 1}
    again = office.get(at).json()
    assert (again["new"], again["changed"], again["unchanged"]) == ([], [], 2)
    assert office.get(lists).json()["items"][0]["applied_at"] is not None


def test_what_is_no_herd_list_is_refused(office, house):
    lists = f"/farms/{house.farm.pk}/herd-lists/"
    blob = base64.b64encode(b"PK\x03\x04 nothing").decode()
    assert code_of(office.post(lists, {"file_name": "x.xlsx", "content": blob})) == (
        409,
        "herd_list_unreadable",
    )
    assert code_of(office.post(lists, {"file_name": "x.csv", "content": "AAAAA"})) == (422, "cannot_be_meant")
    assert office.post(lists, {"file_name": "x.csv", "content": "%%"}).status_code == 400
