"""Visits over the API: asked for, taken through their steps, read by the farm."""

import pytest

from farms.models import Farm
from tests.factories import confirmed, make_cow, planned, under_way, wanted
from tests.visits.api.caller import code_of
from visits.models import Visit

WISH = {"reason": "routine", "due_from": "2026-03-02", "due_until": "2026-03-13", "head_count": 20}
SIGN_OFF = {"signed_by": "The farm", "washed_down": True}
STEPS = [
    (wanted, "plan", {"start": "2026-03-03T10:00:00Z"}, "planned"),
    (planned, "confirm", None, "confirmed"),
    (planned, "tell-hour", None, "planned"),
    (confirmed, "put-off", {"because": "Ill"}, "wanted"),
    (planned, "call-off", {"because": "Ill"}, "called_off"),
    (confirmed, "start", {"checked": True}, "under_way"),
    (under_way, "finish", SIGN_OFF, "finished"),
    (planned, "expect-cows", {"count": 7}, "planned"),
]


def made(house, make):
    return make(house.farm) if make is wanted else make(house.farm, house.van)


def test_a_visit_is_asked_for_and_read(owner, house):
    cow = make_cow(house.farm, "77")
    body = {
        **WISH,
        "farm": house.farm.pk,
        "cows": [{"cow": cow.pk, "mobility_scale": "UK0-3", "mobility_score": 3}],
    }
    asked = owner.post("/visits/", body)
    assert asked.status_code == 201, asked.content
    read = owner.get(asked["Location"].removeprefix("/api/v1"))
    told = read.json()
    assert (told["state"], told["farm"], told["asked_by"]) == ("wanted", house.farm.pk, house.owner.name)
    assert told["asked_cows"][0]["cow"] == cow.pk
    assert told["may"] == ["plan", "call_off", "expect_cows", "change_draft"]
    assert [event["after"] for event in told["events"]] == ["wanted"]
    assert told["draft_length"]["cows"] == 1


@pytest.mark.parametrize(("make", "step", "body", "state"), STEPS)
def test_each_step_takes_a_visit_on(owner, house, make, step, body, state):
    visit = made(house, make)
    if step == "plan":
        body = {**body, "van": house.van.pk}
    done = owner.post(f"/visits/{visit.pk}/{step}/", body)
    assert (done.status_code, done.json().get("state")) == (200, state), done.content
    row = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert row.state == state
    if step == "tell-hour":
        assert row.hour_told == row.planned_start
    if step == "expect-cows":
        assert row.head_count == 7


@pytest.mark.parametrize(
    ("make", "step", "body", "refused"),
    [
        (wanted, "confirm", None, (409, "visit_cannot_move")),
        (wanted, "tell-hour", None, (409, "no_hour_to_tell")),
        (wanted, "call-off", {"because": " "}, (422, "cannot_be_meant")),
        (planned, "start", {"checked": False}, (409, "start_not_checked")),
        (under_way, "expect-cows", {"count": 7}, (409, "draft_is_closed")),
        (wanted, "plan", {"start": "2026-03-03T10:00:00Z", "van": 987654}, (422, "cannot_be_meant")),
        (wanted, "plan", {"start": "9999-12-31T10:00:00Z"}, (422, "cannot_be_meant")),
    ],
)
def test_a_step_that_cannot_be_says_why(owner, house, make, step, body, refused):
    visit = made(house, make)
    if step == "plan":
        body = {"van": house.van.pk, **body}
    assert code_of(owner.post(f"/visits/{visit.pk}/{step}/", body)) == refused
    assert Visit.objects.within(house.scope).get(pk=visit.pk).state == visit.state


def test_a_wish_that_makes_no_sense_is_refused(owner, house):
    body = {**WISH, "farm": house.farm.pk, "due_until": "2026-03-01"}
    assert code_of(owner.post("/visits/", body)) == (409, "wish_makes_no_sense")
    half = {**WISH, "farm": house.farm.pk, "mobility_score": 2}
    assert code_of(owner.post("/visits/", half)) == (422, "cannot_be_meant")


def test_the_list_is_narrowed_by_day_state_and_farm(owner, house):
    visit, other = planned(house.farm, house.van), wanted(house.farm)
    for query, found in [
        ("state=planned", [visit.pk]),
        ("from_day=2026-03-03&until_day=2026-03-03", [visit.pk]),
        ("until_day=2026-03-02", []),
        ("from_day=0001-01-01&until_day=9999-12-31", [visit.pk]),
        (f"farm={house.farm.pk}&order=-id", [other.pk, visit.pk]),
        (f"van={house.van.pk}", [visit.pk]),
    ]:
        assert [item["id"] for item in owner.get(f"/visits/?{query}").json()["items"]] == found, query


def test_a_farm_client_sees_its_own_visits_without_what_is_the_offices(client_of_farm, house):
    visit = planned(house.farm, house.van, note="Ring at the back door")
    other = Farm(business=house.business, name="Elsewhere")
    other.latitude, other.longitude = "54.1", "-2.3"
    other.save()
    strange = wanted(other)
    told = client_of_farm.get(f"/visits/{visit.pk}/").json()
    assert (told["note"], told["asked_by"], told["events"][0]["note"]) == (None, None, None)
    assert told["may"] == ["change_draft"]
    assert client_of_farm.get(f"/visits/{strange.pk}/").status_code == 404
    assert [item["id"] for item in client_of_farm.get("/visits/").json()["items"]] == [visit.pk]
    assert code_of(client_of_farm.post(f"/visits/{visit.pk}/confirm/")) == (403, "not_allowed")
