"""Every refusal has an address that says what its code means, and below /api/v1/ there is no refusal but a problem."""

import re
from pathlib import Path

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import make_house
from trimops.api.problem_codes import NO_ADDRESS, problem_codes
from trimops.web.problems import BARE
from trimops.web.refusals import CODES

ROOT = Path(__file__).parents[3]


def told():
    return {each.code: each for each in problem_codes()}


def test_every_code_in_the_program_is_told():
    written = set()
    for app in ("trimops", "farms", "visits", "invoicing"):
        for path in (ROOT / app).rglob("*.py"):
            if ".".join(path.relative_to(ROOT).with_suffix("").parts).startswith(NO_ADDRESS):
                continue
            written |= set(re.findall(r'^    code = "(\w+)"', path.read_text(), re.MULTILINE))
    assert written - set(told()) - {"refused"} == set()
    assert {code for _, code in CODES} | {code for code, _ in BARE.values()} <= set(told())
    assert [code for code, each in told().items() if not each.says] == []


def test_the_address_in_type_leads_to_the_code(db):
    refused = Client(raise_request_exception=False).get("/api/v1/farms/").json()
    address, _, code = refused["type"].partition("#")
    assert (address, code) == (reverse("api_problems"), "not_signed_in")
    assert f'id="{code}"' in Client().get(address).content.decode()


@pytest.mark.parametrize("path", ["/api/v1/nowhere/", "/api/v1/farms/x/", "/api/v1/farms/0x1/cows/"])
def test_an_address_that_is_none_is_refused_as_a_problem(path, db):
    refused = Client().get(path)
    assert (refused.status_code, refused["Content-Type"]) == (404, "application/problem+json")
    assert refused.json()["code"] == "not_found"


def test_a_page_that_is_none_is_still_a_page(db):
    assert Client().get("/nowhere/")["Content-Type"].startswith("text/html")


def test_a_day_out_of_all_reason_cannot_be_meant(db):
    client = Client()
    house = make_house()
    client.force_login(house.owner)
    refused = client.get(f"/api/v1/farms/{house.farm.pk}/account/?first=9782-12-23")
    assert (refused.status_code, refused.json()["faults"][0]["field"]) == (422, "query.first")
    assert client.get(f"/api/v1/farms/{house.farm.pk}/account/?first=soon").status_code == 400
