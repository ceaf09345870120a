"""What every address of the API has in common, tried on the farms."""

import json
from decimal import Decimal
from uuid import uuid4

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from farms.models import Farm
from tests.factories import House, make_farm, make_house
from trimops.api.refusals import flatten

FARM = {"name": "Low Croft", "latitude": "54.100000", "longitude": "-2.300000"}


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def ask(house):
    client = Client()
    client.force_login(house.owner)

    def call(method, address, body=None, **headers):
        given = {name.replace("_", "-"): value for name, value in headers.items()}
        return client.generic(
            method,
            f"/api/v1{address}",
            json.dumps(body) if body is not None else b"",
            content_type="application/json",
            headers=given,
        )

    return call


def farms_of(house):
    return Farm.objects.within(house.scope).order_by("pk")


def test_a_farm_is_added_once_for_each_key(ask, house):
    before = farms_of(house).count()
    first, again = (ask("POST", "/farms/", {**FARM, "name": "Upper"}, Idempotency_Key="k1") for _ in range(2))
    assert (first.status_code, again.status_code) == (201, 201)
    assert first.content == again.content
    assert (first["ETag"], first["Location"]) == (again["ETag"], again["Location"])
    assert farms_of(house).count() == before + 1
    other = ask("POST", "/farms/", {**FARM, "name": "Other"}, Idempotency_Key="k1")
    assert (other.status_code, other.json()["code"]) == (409, "idempotency_key_reused")


def test_a_call_without_its_key_does_nothing(ask, house):
    before = farms_of(house).count()
    refused = ask("POST", "/farms/", FARM)
    assert refused.status_code == 400
    assert refused.json()["faults"][0]["field"] == "header.Idempotency-Key"
    assert farms_of(house).count() == before


def test_what_was_refused_may_be_tried_again_with_the_same_key(ask, house):
    assert ask("POST", "/farms/", {**FARM, "herd_size": -1}, Idempotency_Key="k").status_code == 400
    assert ask("POST", "/farms/", {**FARM, "name": "Upper"}, Idempotency_Key="k").status_code == 201


def test_a_fault_is_told_with_its_path(ask):
    refused = ask("POST", "/farms/", {**FARM, "latitude": 5, "colour": "red"}, Idempotency_Key=str(uuid4()))
    assert (refused.status_code, refused["Content-Type"]) == (400, "application/problem+json")
    fields = {each["field"] for each in refused.json()["faults"]}
    assert "latitude" in fields
    assert any("colour" in each["reason"] for each in refused.json()["faults"])


def test_what_has_the_shape_but_cannot_be_is_422(ask):
    refused = ask("POST", "/farms/", {**FARM, "latitude": "95.0"}, Idempotency_Key=str(uuid4()))
    assert (refused.status_code, refused.json()["code"]) == (422, "cannot_be_meant")
    assert refused.json()["faults"][0]["field"] == "latitude"


def test_a_change_needs_the_version_that_it_changes(ask, house):
    at = f"/farms/{house.farm.pk}/"
    read = ask("GET", at)
    assert read.status_code == 200
    assert ask("PATCH", at, {"herd_size": 7}).status_code == 428
    changed = ask("PATCH", at, {"herd_size": 7}, If_Match=read["ETag"])
    assert (changed.status_code, changed.json()["herd_size"]) == (200, 7)
    stale = ask("PATCH", at, {"herd_size": 9}, If_Match=read["ETag"])
    assert (stale.status_code, stale.json()["code"]) == (412, "stale")
    assert ask("PATCH", at, {"herd_size": 9}, If_Match="*").json()["herd_size"] == 9
    assert ask("GET", at, If_None_Match=changed["ETag"]).status_code == 200
    assert ask("GET", at, If_None_Match=ask("GET", at)["ETag"]).status_code == 304


def test_a_list_is_paged_by_cursor_and_misses_and_repeats_nothing(ask, house):
    for number in range(7):
        make_farm(house.business, f"Farm {number}", by=house.owner)
    seen, at = [], "/farms/?limit=3&fields=name"
    while at:
        page = ask("GET", at).json()
        assert all(set(item) == {"id", "name"} for item in page["items"])
        seen += [item["name"] for item in page["items"]]
        if len(seen) == 3:
            make_farm(house.business, "AAA came meanwhile", by=house.owner)
        at = page["next"] and page["next"].partition("/api/v1")[2]
    assert seen == sorted(set(seen))
    assert len(seen) == 8
    assert ask("GET", "/farms/?cursor=made-up").status_code == 422


def test_a_place_in_one_list_is_none_in_another(ask, house):
    make_farm(house.business, "Zeal", by=house.owner)
    there = ask("GET", "/farms/?limit=1").json()["next"].partition("?")[2]
    assert ask("GET", f"/farms/?{there}").status_code == 200
    assert ask("GET", f"/payers/?{there}").status_code == 422


def test_a_list_is_ordered_and_filtered(ask, house):
    make_farm(house.business, "Zeal", by=house.owner)
    names = [item["name"] for item in ask("GET", "/farms/?order=-name").json()["items"]]
    assert names == sorted(names, reverse=True)
    assert [item["name"] for item in ask("GET", "/farms/?name=zea").json()["items"]] == ["Zeal"]


@pytest.mark.parametrize(
    "query",
    ["colour=red", "limit=0", "limit=x", "limit=1&limit=2", "order=colour", "fields=colour", "is_active=1"],
)
def test_a_query_that_nothing_asks_for_is_told(ask, query):
    refused = ask("GET", f"/farms/?{query}")
    assert refused.status_code == 400
    assert refused.json()["faults"][0]["field"] == f"query.{query.partition('=')[0]}"


@pytest.mark.parametrize("query", ["cursor=i%0D", "cursor=i%0A", "fields=name%20", "fields=name%0A"])
def test_a_blank_that_the_pattern_does_not_know_is_not_cut_away(ask, query):
    refused = ask("GET", f"/farms/?{query}")
    told = refused.json()["faults"][0]
    assert (refused.status_code, told["field"]) == (400, f"query.{query.partition('=')[0]}")


@pytest.mark.parametrize("country", [" GB", "GB ", "GB\n"])
def test_nor_is_one_of_a_body(ask, country):
    refused = ask("POST", "/farms/", {**FARM, "country": country}, Idempotency_Key="c")
    assert (refused.status_code, refused.json()["faults"][0]["field"]) == (400, "country")


def test_decimals_are_strings(ask, house):
    told = ask("GET", f"/farms/{house.farm.pk}/").json()
    assert isinstance(told["latitude"], str)
    assert Decimal(told["latitude"]) == farms_of(house).get(pk=house.farm.pk).latitude


def test_an_unknown_method_says_which_there_are(ask, house):
    refused = ask("DELETE", f"/farms/{house.farm.pk}/")
    assert (refused.status_code, refused["Allow"]) == (405, "GET, PATCH")
    assert ask("OPTIONS", "/farms/").status_code == 405


def test_a_fault_in_a_row_of_many_is_told_with_its_place_in_the_list():
    errors = {
        "rows": {3: {"number": ["Too long."]}, 5: {"non_field_errors": ["Odd."]}},
        "feet": [{}, {"a": ["b"]}],
    }
    assert flatten(errors) == [("rows[3].number", "Too long."), ("rows[5]", "Odd."), ("feet[1].a", "b")]


def test_a_malformed_body_is_refused_before_a_transaction_is_opened(ask):
    """So whoever sends nonsense holds up nobody: nothing is locked, nothing written."""
    ask("GET", "/farms/")  # the sign-in notes at first that it was heard of
    with CaptureQueriesContext(connection) as found:
        assert ask("POST", "/farms/", {"name": 7}, Idempotency_Key="n").status_code == 400
    said = [query["sql"] for query in found]
    assert [sql for sql in said if sql.startswith(("BEGIN", "SAVEPOINT", "INSERT"))] == []
    good = {**FARM, "name": "Nether Hill"}
    assert ask("POST", "/farms/", good, Idempotency_Key="n").status_code == 201
