"""The watch over lone work by the API: rules, who is told, a watch and its story."""

import pytest

from tests.factories import under_way
from tests.visits.api.caller import Caller, code_of
from tests.visits.services.lone_watch.watched import alarmed, can_tell, house_of_a_file
from visits.domain.lone_watch.watch_cautions import NO_REPLACEMENT

NEIGHBOUR = {"name": "A. Neighbour", "email": "n@home.example", "told_by": "mail"}


@pytest.fixture(scope="module")
def furnished(django_db_setup, django_db_blocker):
    with house_of_a_file(django_db_blocker) as house:
        yield house


@pytest.fixture
def watched(furnished, db, settings):
    can_tell(settings)
    return furnished


def test_a_watch_is_read_with_its_story_and_answered(watched):
    watch, trimmer = alarmed(watched), Caller(watched.trimmer)
    told = trimmer.get(f"/watches/{watch.pk}/").json()
    assert told["state"] == "told"
    assert NO_REPLACEMENT in told["cautions"]
    assert told["events"]
    sent = [message["channel"] for call in told["calls"] for message in call["messages"]]
    assert {"mail", "sms"} == set(sent)
    assert [row["id"] for row in trimmer.get("/watches/?is_open=true").json()["items"]] == [watch.pk]
    well = trimmer.post(f"/watches/{watch.pk}/well/", {"is_done": True})
    assert (well.status_code, well.json()["ended_how"]) == (200, "well")
    assert code_of(Caller(watched.office).get(f"/watches/{watch.pk}/")) == (403, "not_allowed")


def test_a_watch_that_could_tell_nobody_is_not_switched_on(owner, house):
    told = owner.get("/watch-rules/").json()
    assert (told["is_on"], told["changed_at"], NO_REPLACEMENT in told["cautions"]) == (False, None, True)
    assert told["why_not"]
    assert code_of(owner.patch("/watch-rules/", {"is_on": True})) == (409, "cannot_tell_anybody")
    changed = owner.patch("/watch-rules/", {"grace_minutes": 45})
    assert (changed.status_code, changed.json()["grace_minutes"]) == (200, 45)
    assert code_of(owner.post("/watch-rules/try/")) == (409, "cannot_tell_anybody")


def test_somebody_is_put_on_the_list_mended_and_taken_off(owner, house):
    added = owner.post("/watch-contacts/", NEIGHBOUR)
    assert added.status_code == 201, added.content
    at = added["Location"].removeprefix("/api/v1")
    assert owner.patch(at, {"turn": 3}).json()["turn"] == 3
    assert code_of(owner.patch(at, {"email": ""})) == (409, "rule_broken")
    assert owner.get(at).json()["email"] == NEIGHBOUR["email"]
    assert owner.delete(at).status_code == 204
    assert owner.get("/watch-contacts/").json()["items"] == []


def test_a_test_goes_to_everybody_on_the_list(watched):
    tried = Caller(watched.owner).post("/watch-rules/try/")
    assert (tried.status_code, tried.json()["is_test"]) == (201, True)
    rows = Caller(watched.owner).get("/watches/?is_test=true").json()["items"]
    assert [row["id"] for row in rows] == [tried.json()["id"]]


def test_who_works_is_watched_over_where_it_is_begun_by_the_api(watched):
    visit = under_way(watched.farm, watched.van)
    assert Caller(watched.trimmer).get(f"/watches/?visit={visit.pk}").json()["items"]
