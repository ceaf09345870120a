"""A week planned over the API: asked for, read, changed by hand, accepted; and planned again when it breaks."""

import pytest

from tests.factories import House
from tests.visits.api.caller import Caller, code_of
from tests.visits.services.by_hand import HandWeek, hand_week
from tests.visits.services.changed_week import SEVEN, make_week
from tests.visits.services.conftest import SUNDAY_EVENING
from trimops.tenancy.unscoped import unscoped
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import PlanLock, VanOut, Visit, WeekPlan
from visits.services.think_replan import think_replan
from visits.services.think_week_plan import think_week_plan

WEEK = "/weeks/2026-03-02"


@pytest.fixture
def _sunday(monkeypatch):
    monkeypatch.setattr("trimops.web.scoped_api.timezone.now", lambda: SUNDAY_EVENING)


@pytest.fixture
def _tuesday(monkeypatch):
    """At seven, wherever the API reads the clock."""
    monkeypatch.setattr("trimops.web.scoped_api.timezone.now", lambda: SEVEN)


@pytest.fixture
def week(db, _sunday) -> HandWeek:
    return hand_week()


def plan_of(house: House, pk: int) -> WeekPlan:
    return WeekPlan.objects.within(house.scope).get(pk=pk)


def possible(answer):
    return [place for place in answer["places"] if not place["why"] and not place["is_here"]]


def test_a_plan_is_asked_for_thought_about_and_accepted(week):
    owner = Caller(week.house.owner)
    asked = owner.post(f"{WEEK}/plans/")
    assert (asked.status_code, asked.json()["state"]) == (202, "thinking")
    at = asked["Location"].removeprefix("/api/v1")
    assert owner.get(at).json()["shifts"] == []
    think_week_plan(
        week_plan=plan_of(week.house, asked.json()["id"]),
        limits=SolveLimits(iterations=20),
        at=SUNDAY_EVENING,
    )
    told = owner.get(at).json()
    stops = {stop["visit"] for shift in told["shifts"] for stop in shift["stops"]}
    assert stops == {visit.pk for visit in week.visits}
    assert (told["state"], told["left_out"], told["cost"]["out"]) == ("proposed", [], "0.00")
    assert told["cost_history"]
    assert owner.get(f"{WEEK}/plans/?order=-asked_at").json()["items"][0]["id"] == told["id"]
    assert owner.get(f"{at}problem/").json()["format"] == "trimops-week-problem/1"
    accepted = owner.post(f"{at}accept/", {})
    assert (accepted.status_code, accepted.json()["state"]) == (200, "accepted"), accepted.content
    rows = Visit.objects.within(week.house.scope).filter(pk__in=stops)
    assert {row.state for row in rows} == {"planned"}
    assert code_of(owner.post(f"{at}accept/", {})) == (409, "plan_is_stale")


def test_the_week_is_told_as_the_planner_is_given_it(week):
    told = Caller(week.house.office).get(f"{WEEK}/problem/").json()
    assert {job["id"] for job in told["jobs"]} == {f"visit-{visit.pk}" for visit in week.visits}
    assert Caller(week.house.office).get("/weeks/monday/problem/").status_code == 404
    refused = Caller(week.house.office).post(f"{WEEK}/plans/")
    assert code_of(refused) == (403, "not_allowed")
    empty = Caller(week.house.owner).post("/weeks/2026-01-05/plans/")
    assert code_of(empty) == (409, "nothing_to_plan")


def test_a_stop_is_priced_moved_and_brought_back(week):
    owner, visit, at = Caller(week.house.owner), week.visits[0], f"/plans/{week.plan.pk}"
    place = possible(owner.get(f"{at}/stops/{visit.pk}/places/").json())[0]
    moved = owner.post(
        f"{at}/stops/{visit.pk}/move/", {"shift": place["shift"], "position": place["position"]}
    )
    assert moved.status_code == 200, moved.content
    assert moved.json()["made_by"] == "hand"
    assert visit.farm.name in moved.json()["what_changed"]
    version = plan_of(week.house, moved.json()["id"])
    assert week.spot(visit, version) == (place["shift"], place["position"])
    late = owner.post(f"{at}/stops/{visit.pk}/move/", {"shift": None})
    assert code_of(late) == (409, "plan_was_changed")
    against = owner.get(f"/plans/{version.pk}/against/{week.plan.pk}/").json()
    assert visit.pk in [row["visit"] for row in against["visits"] if row["change"] != "stays"]
    back = owner.post(f"{at}/bring-back/")
    assert (back.status_code, back.json()["state"]) == (200, "proposed")
    dropped = owner.post(f"{at}/drop/")
    assert dropped.json()["state"] == "set_aside"


def test_a_stop_is_locked_and_let_go(week):
    owner, visit = Caller(week.house.owner), week.visits[0]
    at = f"/plans/{week.plan.pk}/stops/{visit.pk}"
    locked = owner.post(f"{at}/lock/", {"on": "day"})
    assert (locked.status_code, locked.json()["visit"], locked.json()["start"]) == (200, visit.pk, None)
    assert owner.post(f"{at}/unlock/").json() == {"was_locked": True}
    assert owner.post(f"{at}/unlock/").json() == {"was_locked": False}
    assert not PlanLock.objects.within(week.house.scope).exists()


def test_a_day_sheet_is_printed(week):
    office = Caller(week.house.office)
    shift = next(shift["id"] for shift in week.plan.plan["shifts"] if shift["stops"])
    sheet = office.get(f"/plans/{week.plan.pk}/sheets/{shift}/pdf/")
    assert (sheet.status_code, sheet.content[:4]) == (200, b"%PDF")
    assert office.get(f"/plans/{week.plan.pk}/sheets/none/pdf/").status_code == 404


def test_thinking_is_stopped_and_a_plan_is_to_be_proven(week):
    owner = Caller(week.house.owner)
    asked = owner.post(f"{WEEK}/plans/").json()
    stopped = owner.post(f"/plans/{asked['id']}/enough/").json()
    assert stopped["stop_asked_at"]
    assert code_of(owner.post(f"/plans/{asked['id']}/prove/")) == (409, "not_to_be_proven")
    assert owner.post(f"/plans/{week.plan.pk}/prove/").status_code == 200


@pytest.fixture
def changed(db, _tuesday):
    return make_week()


def test_a_week_that_broke_is_planned_again_and_read_beside_the_old_one(changed):
    owner, house = Caller(changed.house.owner), changed.house
    body = {
        "van": house.van.pk,
        "because": "crush",
        "since": "2026-03-03T08:00:00Z",
        "until": "2026-03-04T18:00:00Z",
    }
    noted = owner.post(f"{WEEK}/happenings/van-out/", body)
    assert noted.status_code == 202, noted.content
    plan = plan_of(house, noted.json()["plan"])
    assert VanOut.objects.within(house.scope).get().because == "crush"
    assert owner.get(f"/plans/{plan.pk}/change/").status_code == 404
    with unscoped("a test thinks in the worker's place"):
        think_replan(week_plan=plan, limits=SolveLimits(iterations=40), at=SEVEN)
    told = owner.get(f"/plans/{plan.pk}/change/").json()
    assert told["because"].startswith(house.van.name)
    moving = [row["visit"] for row in told["visits"] if row["asks"]]
    done = owner.post(f"/plans/{plan.pk}/accept/", {"agreed": moving})
    assert (done.status_code, done.json()["state"]) == (200, "accepted"), done.content


def test_what_happened_is_judged(changed):
    owner, house = Caller(changed.house.owner), changed.house
    back = {
        "van": house.van.pk,
        "because": "van",
        "since": "2026-03-04T08:00:00Z",
        "until": "2026-03-03T08:00:00Z",
    }
    assert code_of(owner.post(f"{WEEK}/happenings/van-out/", back)) == (409, "happening_makes_no_sense")
    ill = {"van": house.van.pk, "first": "2026-03-04", "last": "2026-03-03"}
    assert code_of(owner.post(f"{WEEK}/happenings/ill/", ill)) == (422, "cannot_be_meant")
    lame = {"farm": house.farm.pk, "due_until": "2026-03-01", "asked_by": "The farm"}
    assert code_of(owner.post(f"{WEEK}/happenings/lame/", lame)) == (422, "cannot_be_meant")
    asked = owner.post(f"{WEEK}/happenings/lame/", {**lame, "due_until": "2026-03-04"})
    assert asked.status_code == 202, asked.content
    newest = Visit.objects.within(house.scope).order_by("-pk").first()
    assert (newest.reason, newest.farm_id) == ("urgent", house.farm.pk)
    visit = Visit.objects.within(house.scope).filter(planned_start__isnull=False).first()
    off = owner.post(f"{WEEK}/happenings/called-off/", {"visit": visit.pk, "because": "Snow"})
    assert off.status_code == 202, off.content
    late = owner.post(f"{WEEK}/happenings/late/", {"visit": newest.pk, "free": "2026-03-03T12:00:00Z"})
    assert code_of(late) == (422, "cannot_be_meant")
