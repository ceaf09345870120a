"""When can you come, over the API: asked, held, taken; by staff and by the farm itself."""

from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import make_cow, make_farm, planned
from tests.visits.api.caller import Caller, code_of
from visits.models import HeldHour, Visit

TODAY = datetime.now(UTC).date()
WISH = {
    "reason": "routine",
    "due_from": str(TODAY),
    "due_until": str(TODAY + timedelta(days=13)),
    "head_count": 4,
}
QUERY = f"reason=routine&due_from={TODAY}&due_until={TODAY + timedelta(days=13)}&head_count=4"


@pytest.fixture
def desk(house):
    return Caller(house.office)


@pytest.fixture
def farm_client(house):
    return Caller(house.client)


@pytest.fixture
def at(house):
    return f"/farms/{house.farm.pk}"


def first_place(caller, at):
    answer = caller.get(f"{at}/offers/?{QUERY}")
    assert answer.status_code == 200, answer.content
    offer = answer.json()["offers"][0]
    return {name: offer[name] for name in ("van", "first", "last")}


@pytest.mark.parametrize("who", ["desk", "farm_client"])
def test_more_lame_cows_than_cows_is_refused_where_an_hour_is_held(who, request, house, at):
    caller = request.getfixturevalue(who)
    body = {**WISH, "corrective_count": 5, "place": first_place(caller, at)}
    assert code_of(caller.post(f"{at}/held-hours/", body)) == (409, "wish_makes_no_sense")
    assert not HeldHour.objects.within(house.scope).exists()


@pytest.mark.parametrize("who", ["desk", "farm_client"])
def test_an_hour_is_offered_held_and_taken(who, request, house, at):
    caller = request.getfixturevalue(who)
    cow = make_cow(house.farm, "55")
    body = {**WISH, "cows": [{"cow": cow.pk, "why": "Walks badly"}], "place": first_place(caller, at)}
    held = caller.post(f"{at}/held-hours/", body)
    assert held.status_code == 201, held.content
    told = held.json()
    assert (told["is_in_force"], told["moved_visit"], told["head_count"]) == (True, None, 4)
    assert caller.get(f"/held-hours/{told['id']}/").json()["start"] == told["start"]
    taken = caller.post(f"/held-hours/{told['id']}/take/", {})
    assert (taken.status_code, taken.json()["state"]) == (200, "confirmed"), taken.content
    assert Visit.objects.within(house.scope).get().asked_cows.within(house.scope).get().cow == cow
    assert code_of(caller.post(f"/held-hours/{told['id']}/take/", {})) == (409, "hour_is_not_held")
    assert caller.get("/held-hours/?in_force=true").json()["items"] == []
    assert len(caller.get("/held-hours/?state=taken").json()["items"]) == 1


def test_an_hour_that_is_let_go_is_free_again(desk, at, house):
    place = first_place(desk, at)
    held = desk.post(f"{at}/held-hours/", {**WISH, "place": place}).json()
    gone = desk.post(f"{at}/held-hours/", {**WISH, "place": {**place, "van": 987654}})
    assert code_of(gone) == (409, "offer_is_gone")
    let_go = desk.post(f"/held-hours/{held['id']}/let-go/")
    assert (let_go.status_code, let_go.json()["state"]) == (200, "let_go")
    assert HeldHour.objects.within(house.scope).get().state == "let_go"


def test_a_farm_is_told_nothing_of_the_round_it_lies_in(farm_client, desk, house, at):
    other = make_farm(house.business, "Elsewhere", by=house.owner)
    noon = datetime.combine(TODAY + timedelta(days=1), datetime.min.time(), UTC) + timedelta(hours=12)
    planned(other, house.van, noon)
    told = farm_client.get(f"{at}/offers/?{QUERY}")
    assert b"Elsewhere" not in told.content
    assert all(offer["money"] is None and offer["moved"] is None for offer in told.json()["offers"])
    assert any(offer["money"] is not None for offer in desk.get(f"{at}/offers/?{QUERY}").json()["offers"])
    assert farm_client.get(f"/farms/{other.pk}/offers/").status_code == 404


@pytest.mark.parametrize(
    "query",
    [
        "mobility_score=2",
        "mobility_scale=UK0-3&mobility_score=5",
        "head_count=1&corrective_count=2",
        "due_from=9999-12-31",
        "due_until=1990-01-02",
    ],
)
def test_a_question_that_cannot_be_meant_is_told(desk, at, query):
    assert code_of(desk.get(f"{at}/offers/?{query}")) == (422, "cannot_be_meant")


def test_a_farm_leaves_its_wish_in_its_own_name(farm_client, house, at):
    left = farm_client.post(f"{at}/wishes/", {**WISH, "asked_by": "Somebody else"})
    assert left.status_code == 201, left.content
    visit = Visit.objects.within(house.scope).get()
    assert (visit.asked_by, visit.state) == (house.client.name, "wanted")
    for wrong in ({"reason": "recheck"}, {"due_from": "2001-01-01"}, {"due_until": "2099-01-01"}):
        assert code_of(farm_client.post(f"{at}/wishes/", {**WISH, **wrong})) == (422, "cannot_be_meant")


def test_a_person_without_the_right_asks_for_nothing(farm_client, rights, at):
    rights()
    assert code_of(farm_client.get(f"{at}/offers/")) == (403, "not_allowed")
    assert code_of(farm_client.post(f"{at}/wishes/", WISH)) == (403, "not_allowed")
