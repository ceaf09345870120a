"""The draft list, its rules and mobility scores over the API."""

from datetime import UTC, datetime, timedelta

import pytest

from farms.models import FarmAccess
from tests.factories import make_cow, make_farm, planned, under_way
from tests.visits.api.caller import code_of
from visits.models import DraftChange

TODAY = datetime.now(UTC).date().isoformat()


@pytest.fixture
def visit(house):
    return planned(house.farm, house.van, datetime.now(UTC) + timedelta(days=3), head_count=3)


def cows_of(told):
    return [line["cow"] for line in told["present"]]


def test_the_farm_itself_adds_strikes_and_takes_back(client_of_farm, owner, house, visit):
    cow, at = make_cow(house.farm, "55"), f"/visits/{visit.pk}/draft/"
    assert client_of_farm.get(at).json()["may_change"]
    added = client_of_farm.post(f"{at}add/", {"cow": cow.pk, "why": "Swollen"})
    assert added.status_code == 200, added.content
    assert cow.pk in cows_of(added.json())
    assert code_of(client_of_farm.post(f"{at}add/", {"cow": cow.pk})) == (409, "cow_is_on_the_list")
    struck = owner.post(f"{at}strike/", {"cow": cow.pk}).json()
    assert cow.pk not in cows_of(struck)
    (change,) = struck["changes"]
    assert (change["kind"], change["by"]) == ("struck", house.owner.name)
    back = owner.post(f"{at}changes/{change['id']}/take-back/")
    assert (back.status_code, back.json()["changes"]) == (200, [])
    assert owner.post(f"{at}changes/{change['id']}/take-back/").status_code == 404


def test_a_cow_of_another_farm_and_a_list_that_stands_are_refused(client_of_farm, owner, house, visit):
    other = make_farm(house.business, "Elsewhere", by=house.owner)
    strange = make_cow(other, "9")
    add = f"/visits/{visit.pk}/draft/add/"
    assert code_of(owner.post(add, {"cow": strange.pk})) == (409, "cow_cannot_come")
    assert code_of(client_of_farm.post(add, {"cow": strange.pk})) == (422, "cannot_be_meant")
    running = under_way(house.farm, house.van)
    closed = f"/visits/{running.pk}/draft/add/"
    assert code_of(owner.post(closed, {"cow": house.cow.pk})) == (409, "draft_is_closed")
    assert not DraftChange.objects.within(house.scope).exists()


def test_a_person_without_the_right_reads_the_list_alone(client_of_farm, house, visit):
    access = FarmAccess.objects.within(house.scope).get()
    access.edits_draft = False
    access.save()
    assert not client_of_farm.get(f"/visits/{visit.pk}/draft/").json()["may_change"]
    refused = client_of_farm.post(f"/visits/{visit.pk}/draft/strike/", {"cow": house.cow.pk})
    assert code_of(refused) == (403, "not_allowed")


def test_the_list_comes_as_a_pdf(client_of_farm, visit):
    paper = client_of_farm.get(f"/visits/{visit.pk}/draft/pdf/")
    assert (paper.status_code, paper["Content-Type"], paper.content[:4]) == (200, "application/pdf", b"%PDF")


def test_a_farm_goes_by_a_set_with_days_of_its_own(owner, house):
    at = f"/farms/{house.farm.pk}/draft-rules/"
    usual = owner.get(at).json()
    assert (usual["rule_set"], usual["own"], usual["rules"]["milk_from"]) == ("round", {}, 60)
    own = owner.patch(at, {"own": {"milk_from": 70}}).json()
    assert (own["own"], own["rules"]["milk_from"]) == ({"milk_from": 70}, 70)
    other = owner.patch(at, {"rule_set": "spaced"}).json()
    assert (other["rule_set"], other["own"]) == ("spaced", {})
    refused = owner.patch(at, {"own": {"calving_warning": 7}})
    assert code_of(refused) == (409, "draft_rules_make_no_sense")
    assert "spaced" in {each["rule_set"] for each in owner.get("/draft-rule-sets/").json()["items"]}


def test_a_round_of_scores_is_noted_by_the_farm_and_read(client_of_farm, house):
    body = {
        "scored_on": TODAY,
        "scale": "UK0-3",
        "whole_herd": True,
        "scores": [{"cow": house.cow.pk, "score": 2}],
    }
    at = f"/farms/{house.farm.pk}/scorings/"
    noted = client_of_farm.post(at, body)
    assert noted.status_code == 201, noted.content
    read = client_of_farm.get(noted["Location"].removeprefix("/api/v1")).json()
    assert read["scores"] == [{"cow": house.cow.pk, "number": "101", "score": 2}]
    assert [row["id"] for row in client_of_farm.get(at).json()["items"]] == [read["id"]]
    too_high = {**body, "scores": [{"cow": house.cow.pk, "score": 5}]}
    assert code_of(client_of_farm.post(at, too_high)) == (409, "scores_make_no_sense")
    ahead = {**body, "scored_on": "2099-01-01"}
    assert code_of(client_of_farm.post(at, ahead)) == (409, "scores_make_no_sense")
