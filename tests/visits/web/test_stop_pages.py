"""The pages of one stop: its places with their prices, moving it, locking it."""

from datetime import UTC, date, datetime, time, timedelta

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import make_wish
from tests.visits.services.by_hand import hand_week
from trimops.accounts.roles import Role
from trimops.kernel.clock import at_local, monday_of
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.visit_states import VisitReason
from visits.models import PlanLock, Van, WeekPlan
from visits.selectors.farm_offers import farm_offers
from visits.selectors.offer_again import AskedPlace
from visits.selectors.plan_in_force import plan_in_force
from visits.selectors.stop_places import KEEPS_ITS_HOUR
from visits.services.ask_week_plan import ask_week_plan
from visits.services.confirm_visit import confirm_visit
from visits.services.hold_offer import OfferToHold, asked_for, hold_offer
from visits.services.plan_visit import plan_visit
from visits.services.set_plans_aside import set_other_plans_aside
from visits.services.think_week_plan import think_week_plan


@pytest.fixture
def week(db):
    """Of the week after this one, so that no day of it has begun."""
    now = datetime.now(UTC).replace(microsecond=0)
    monday = monday_of(now.date()) + timedelta(days=7)
    return hand_week(now, due_from=monday, due_until=monday + timedelta(days=11))


@pytest.fixture
def client(week):
    client = Client()
    client.force_login(week.house.trimmer)
    return client


def address(week, name, visit, plan=None):
    return reverse(name, args=[(plan or week.plan).pk, visit.pk])


def places_of(client, week, visit):
    return client.get(address(week, "week_stop_places", visit)).json()


def possible(answer):
    return [place for place in answer["places"] if not place["why"] and not place["here"]]


def test_one_answer_holds_every_place_with_its_price_or_what_stands_in_the_way(client, week):
    visit = week.visits[0]
    answer = places_of(client, week, visit)
    stops = {s["id"]: [x["job"] for x in s["stops"]] for s in week.plan.plan["shifts"]}
    job = f"visit-{visit.pk}"
    expected = sum(
        len([x for x in stops.get(shift["id"], []) if x != job]) + 1 for shift in week.plan.problem["shifts"]
    )
    assert len(answer["places"]) == expected
    assert all(bool(place["price"]) != bool(place["why"]) for place in answer["places"])
    assert sum(place["here"] for place in answer["places"]) == 1
    assert answer["name"] == visit.farm.name
    assert any("more" in place["price"] for place in possible(answer))


def test_an_hour_that_is_only_held_has_its_place_in_the_row_and_is_counted(client, week):
    """A position counts what the row shows: else a stop would be dropped beside the place that was priced."""
    now = week.plan.asked_at
    farm, due = week.visits[0].farm, {"due_from": week.plan.monday, "due_until": week.plan.monday}
    wish = make_wish(reason=VisitReason.URGENT, head_count=2, **due)
    best = farm_offers(asked_for(farm, wish), now).fits[0]
    place = AskedPlace(best.van.pk, best.first, best.last)
    held = hold_offer(farm=farm, offer=OfferToHold(wish, place), at=now, by=week.house.office)
    plan = ask_week_plan(business=week.house.business, monday=week.plan.monday, at=now, by=week.house.owner)
    plan = think_week_plan(week_plan=plan, limits=SolveLimits(iterations=20), at=now)
    page = client.get(f"/week/?week={plan.monday}&day={plan.monday}")
    assert f'data-stop="{held.job}"'.encode() in page.content
    answer = client.get(address(week, "week_stop_places", week.visits[1], plan)).json()
    assert any("(hour held)" in place["where"] for place in answer["places"])
    move = next(place for place in possible(answer))
    form = {"shift": move["shift"], "position": move["position"]}
    assert client.post(address(week, "week_stop_move", week.visits[1], plan), form).status_code == 302
    version = plan_in_force(week.house.scope, plan.monday)
    assert week.spot(week.visits[1], version) == (move["shift"], move["position"])
    starts = {s["job"]: s["start"] for d in version.plan["shifts"] for s in d["stops"]}
    assert datetime.fromisoformat(starts[held.job]) == held.start


def test_the_page_has_a_button_for_the_best_place_of_each_day(client, week):
    visit = week.visits[0]
    page = client.get(address(week, "week_stop", visit))
    days = {place["shift"] for place in possible(places_of(client, week, visit))}
    assert len(page.context["places"].best_by_shift) == len(days)
    for place in page.context["places"].best_by_shift:
        assert place.price.encode() in page.content


def test_what_is_dropped_is_what_was_priced(client, week):
    visit = week.visits[0]
    place = possible(places_of(client, week, visit))[0]
    answer = client.post(
        address(week, "week_stop_move", visit), {"shift": place["shift"], "position": place["position"]}
    )
    assert answer.status_code == 302
    assert answer["Location"] == f"/week/?week={week.plan.monday}&day={place['day']}"
    version = plan_in_force(week.house.scope, week.plan.monday)
    assert week.spot(visit, version) == (place["shift"], place["position"])
    page = client.get(answer["Location"])
    assert place["price"].encode() in page.content, "the message says the price again"
    assert b"Undo the move" in page.content
    before, after = (plan.plan["cost"]["shifts"] for plan in (week.plan, version))
    assert after - before == pytest.approx(place["money"], abs=0.01)


def test_a_place_against_a_rule_is_refused_in_words(client, week):
    visit = week.visits[0]
    client.post(address(week, "week_stop_lock", visit), {"on": "day"})
    (other,) = {week.other_shift(visit)}
    answer = client.post(address(week, "week_stop_move", visit), {"shift": other, "position": "0"})
    assert answer.status_code == 409
    assert b"is locked to its van and day" in answer.content


@pytest.mark.parametrize("form", [{"shift": "van-0-2026-01-01"}, {"shift": "nonsense"}])
def test_a_day_that_is_not_in_the_plan_is_not_there(client, week, form):
    assert client.post(address(week, "week_stop_move", week.visits[0]), form).status_code == 404


@pytest.mark.parametrize("position", ["-1", "many", "99", "1e9"])
def test_a_position_that_is_none_is_refused(client, week, position):
    form = {"shift": week.other_shift(week.visits[0]), "position": position}
    assert client.post(address(week, "week_stop_move", week.visits[0]), form).status_code == 409


def test_taking_it_out_puts_it_among_those_left_out(client, week):
    visit = week.visits[0]
    client.post(address(week, "week_stop_move", visit), {"shift": ""})
    page = client.get(f"/week/?week={week.plan.monday}")
    assert [item.visit for item in page.context["view"].left_out] == [visit]
    version = plan_in_force(week.house.scope, week.plan.monday)
    again = client.get(address(week, "week_stop", visit, version))
    assert b"is left out of this week" in again.content


@pytest.mark.parametrize(("on", "has_hour"), [("day", False), ("hour", True)])
def test_a_stop_is_locked_and_unlocked(client, week, on, has_hour):
    visit = week.visits[0]
    page = client.post(address(week, "week_stop_lock", visit), {"on": on}, follow=True)
    (lock,) = PlanLock.objects.within(week.house.scope)
    assert (lock.visit, lock.start is not None) == (visit, has_hour)
    assert b"Unlock it" in page.content
    client.post(address(week, "week_stop_lock", visit), {"on": "off"})
    assert not PlanLock.objects.within(week.house.scope).exists()


def test_a_stop_locked_to_its_hour_says_so_at_every_other_place(client, week):
    visit = week.visits[0]
    client.post(address(week, "week_stop_lock", visit), {"on": "hour"})
    answer = places_of(client, week, visit)
    assert possible(answer) == []
    assert {p["why"] for p in answer["places"] if not p["here"]} == {KEEPS_ITS_HOUR}
    assert answer["out"] == {"price": "", "why": "It must be planned: it is urgent, confirmed or locked."}


def test_the_office_looks_at_the_week_but_moves_nothing(week):
    client = Client()
    client.force_login(week.house.memberships[Role.OFFICE].user)
    page = client.get(f"/week/?week={week.plan.monday}")
    assert page.status_code == 200
    assert b"data-grip" not in page.content
    assert b"move_stop.js" not in page.content


def test_a_plan_that_was_set_aside_is_only_looked_at(client, week):
    visit = week.visits[0]
    newer = WeekPlan.objects.within(week.house.scope).get(pk=week.plan.pk)
    newer.pk = None
    newer.save()
    set_other_plans_aside(week_plan=newer)
    page = client.get(address(week, "week_stop", visit))
    assert b"only looked at" in page.content
    assert b'<button class="act">To ' not in page.content
    assert client.post(address(week, "week_stop_move", visit), {"shift": ""}).status_code == 409


def test_a_promise_that_breaks_the_plan_is_said_where_the_stop_is_picked_up(client, week):
    """The farm was promised another hour of the same day, by hand, after the plan was made."""
    visit = week.visits[0]
    shift, _ = week.spot(visit)
    van = Van.objects.within(week.house.scope).get(pk=int(shift.split("-")[1]))
    start = at_local(date.fromisoformat(shift[-10:]), time(5), week.house.business.zone)
    row = plan_visit(visit=visit, van=van, start=start, at=week.plan.asked_at, by=week.house.owner)
    confirm_visit(visit=row, at=week.plan.asked_at, by=week.house.owner)
    answer = client.get(address(week, "week_stop_places", visit))
    assert (answer.status_code, "promised or locked since" in answer.json()["fault"]) == (409, True)
    assert client.get(address(week, "week_stop", visit)).status_code == 409


def test_a_visit_left_out_that_was_promised_otherwise_is_not_the_plans_any_more(client, week):
    visit, other = week.visits[:2]
    client.post(address(week, "week_stop_move", visit), {"shift": ""})
    version = plan_in_force(week.house.scope, week.plan.monday)
    day = next(
        s["id"] for s in version.problem["shifts"] if s["id"] not in {d["id"] for d in version.plan["shifts"]}
    )
    van = Van.objects.within(week.house.scope).get(pk=int(day.split("-")[1]))
    start = at_local(date.fromisoformat(day[-10:]), time(10), week.house.business.zone)
    row = plan_visit(visit=visit, van=van, start=start, at=week.plan.asked_at, by=week.house.owner)
    confirm_visit(visit=row, at=week.plan.asked_at, by=week.house.owner)
    assert client.get(address(week, "week_stop", visit, version)).status_code == 404
    places = client.get(address(week, "week_stop_places", other, version)).json()
    move = possible(places)[0]
    form = {"shift": move["shift"], "position": move["position"]}
    assert client.post(address(week, "week_stop_move", other, version), form).status_code == 302
    page = client.get(f"/week/?week={week.plan.monday}")
    assert visit not in [item.visit for item in page.context["view"].left_out]
