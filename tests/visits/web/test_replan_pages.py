"""Something changed: from the button to the new diary."""

import html
import re

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from tests.factories import finish, make_farm, make_house, planned, wanted
from tests.visits.services.changed_week import SEVEN, ChangedWeek, at, make_week
from tests.visits.services.messages.told_farms import SETTLED, mailed, switch_on
from trimops.accounts.roles import Role
from trimops.tenancy.unscoped import unscoped
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.what_happened import WhatHappened
from visits.models import VanOut, Visit, WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.messages.tell_hour_news import tell_hour_news
from visits.services.start_visit import start_visit
from visits.services.think_replan import think_replan
from visits.services.think_week_plan import think_week_plan

WEEK = "2026-03-02"


@pytest.fixture
def changed(db) -> ChangedWeek:
    return make_week()


@pytest.fixture
def client(changed):
    client = Client()
    client.force_login(changed.house.owner)
    return client


@pytest.fixture(autouse=True)
def _now(monkeypatch):
    """Tuesday at seven, wherever a page reads the clock."""
    monkeypatch.setattr("trimops.web.scoped_page.timezone.now", lambda: SEVEN)


def text_of(answer):
    body = answer.content.decode().split("<main", 1)[1]
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", body)).split())


def post(client, what, **data):
    return client.post(reverse("week_changed_what", args=[WEEK, what]), data)


def thought_about(answer):
    pk = int(answer["Location"].rstrip("/").split("/")[-1])
    with unscoped("a test follows where it was led"):
        plan = WeekPlan.objects.get(pk=pk)
    return think_replan(week_plan=plan, limits=SolveLimits(iterations=40), at=SEVEN)


def out(client, changed):
    answer = post(
        client,
        "out",
        van=changed.house.van.pk,
        because="crush",
        since="2026-03-03T07:00",
        until="2026-03-07T00:00",
    )
    return thought_about(answer)


def test_the_week_page_leads_to_what_can_have_changed(client):
    assert (
        reverse("week_changed", args=[WEEK])
        in client.get(reverse("this_week") + f"?week={WEEK}").content.decode()
    )
    page = text_of(client.get(reverse("week_changed", args=[WEEK])))
    assert all(what.label in page for what in WhatHappened)


@pytest.mark.parametrize("what", list(WhatHappened))
def test_each_form_opens_and_an_empty_one_is_sent_back(client, what):
    address = reverse("week_changed_what", args=[WEEK, what.value])
    assert what.label in text_of(client.get(address))
    assert client.post(address).status_code == 400


def test_what_nobody_knows_is_not_there(client):
    assert client.get(reverse("week_changed_what", args=[WEEK, "moon"])).status_code == 404
    assert client.get(reverse("week_changed", args=["soon"])).status_code == 404


def test_a_visit_cannot_be_late_where_none_is_today(db):
    house = make_house("Fell & Beck")
    client = Client()
    client.force_login(house.owner)
    assert "No visit stands in the diary" in text_of(
        client.get(reverse("week_changed_what", args=[WEEK, "late"]))
    )


def test_old_against_new_is_shown_before_anything_moves(client, changed):
    plan = out(client, changed)
    page = text_of(client.get(reverse("replan", args=[plan.pk])))
    assert "Van 1: crush broken" in page
    assert "The diary is as it was" in page
    assert "1 confirmed visit cannot be kept" in page
    assert changed.stored("first").van == changed.house.van


def test_a_broken_promise_needs_its_tick(client, changed):
    plan = out(client, changed)
    accept = reverse("replan_accept", args=[plan.pk])
    assert client.post(accept).status_code == 409
    assert client.post(accept, {"agreed": [changed.visits["firm"].pk, "x"]}).status_code == 302
    assert changed.stored("firm").van == changed.second
    assert "Now tell the farms" in text_of(client.get(reverse("replan", args=[plan.pk])))


def test_drafts_are_shown_and_nothing_is_sent(client, changed, mailoutbox):
    plan = out(client, changed)
    answer = client.get(reverse("replan", args=[plan.pk]))
    page = text_of(answer)
    assert "because our kit has broken down" in page
    assert b'href="sms:01539000111?body=' in answer.content
    # Nobody had told this farm any hour: it is offered the new one, and no reason is due.
    assert "we can come to Other" in page
    assert mailoutbox == []


def test_a_farm_that_was_told_counts_on_its_new_hour(client, changed):
    plan = out(client, changed)
    client.post(reverse("replan_accept", args=[plan.pk]), {"agreed": [changed.visits["firm"].pk]})
    told = changed.visits["told"]
    client.post(reverse("replan_told", args=[plan.pk, told.pk]))
    row = changed.stored("told")
    assert row.hour_told == row.planned_start


def test_who_is_told_alone_is_named_with_what_became_of_it_and_told_once(client, changed):
    house, told = changed.house, changed.visits["told"]
    plan = out(client, changed)
    assert "Nothing is sent from here" in text_of(client.get(reverse("replan", args=[plan.pk])))
    switch_on(house)
    mailed(house, farm=told.farm)
    client.post(reverse("replan_accept", args=[plan.pk]), {"agreed": [changed.visits["firm"].pk]})
    messages = [tell_hour_news(visit=visit, at=SEVEN + SETTLED) for visit in changed.visits.values()]
    assert [message.visit for found in messages for message in found] == [told]
    page = text_of(client.get(reverse("replan", args=[plan.pk])))
    assert "hears of it two minutes after" in page
    assert "Waiting to go Told by e-mail to Ann Mail, Tue 3 Mar, 07:03: visit moved." in page
    visit = text_of(client.get(reverse("visit", args=[told.pk])))
    assert "What the farm was told Visit moved" in visit


def test_a_dropped_plan_leaves_the_diary(client, changed):
    plan = out(client, changed)
    assert client.post(reverse("replan_drop", args=[plan.pk])).status_code == 302
    assert "not taken" in text_of(client.get(reverse("replan", args=[plan.pk])))
    assert changed.stored("first").planned_start == at(3, 9)


def test_progress_is_told_until_it_is_done(client, changed):
    plan = changed.asked(changed.out())
    waiting = client.get(reverse("replan_state", args=[plan.pk])).json()
    assert (waiting["done"], waiting["url"]) == (False, "")
    assert "Looking for the least change" in text_of(client.get(reverse("replan", args=[plan.pk])))
    think_replan(week_plan=plan, limits=SolveLimits(iterations=10), at=SEVEN)
    done = client.get(reverse("replan_state", args=[plan.pk])).json()
    assert (done["done"], done["url"]) == (True, reverse("replan", args=[plan.pk]))


def test_a_late_van(client, changed, monkeypatch):
    first = start_visit(visit=changed.visits["first"], checked=True, at=at(3, 9), by=changed.house.trimmer)
    monkeypatch.setattr("trimops.web.scoped_page.timezone.now", lambda: at(3, 10))
    plan = thought_about(post(client, "late", visit=first.pk, free="12:10", meal_had="on"))
    assert changed.stop(plan, "told")[1] >= at(3, 12, 10)
    assert "is done at First at 12:10 only" in text_of(client.get(reverse("replan", args=[plan.pk])))


def test_an_ill_trimmer_a_visit_called_off_and_a_lame_cow(client, changed):
    ill = thought_about(post(client, "ill", van=changed.second.pk, first="2026-03-03", last="2026-03-04"))
    assert VanOut.objects.within(changed.house.scope).get().until == at(5, 0)
    assert changed.stop(ill, "other")[0].startswith(f"van-{changed.house.van.pk}-")
    off = thought_about(post(client, "called-off", visit=changed.visits["first"].pk, because="Sold"))
    assert "First calls its visit off: Sold" in text_of(client.get(reverse("replan", args=[off.pk])))
    lame = post(
        client,
        "lame",
        farm=changed.house.farm.pk,
        head_count=2,
        due_until="2026-03-04",
        score="UK0-3/3",
        asked_by="Jo",
    )
    assert "1 put in" in text_of(client.get(reverse("replan", args=[thought_about(lame).pk])))
    assert Visit.objects.within(changed.house.scope).get(farm=changed.house.farm).reason == "urgent"


def test_a_lame_cow_cannot_have_been_seen_yesterday(client, changed):
    answer = post(
        client, "lame", farm=changed.house.farm.pk, head_count=1, due_until="2026-03-02", asked_by="Jo"
    )
    assert answer.status_code == 400
    assert "This day is over" in text_of(answer)


def test_the_office_sees_but_does_not_decide(changed, client):
    plan = out(client, changed)
    office = Client()
    office.force_login(changed.house.memberships[Role.OFFICE].user)
    assert "Accept the new plan" not in text_of(office.get(reverse("replan", args=[plan.pk])))
    assert office.post(reverse("replan_accept", args=[plan.pk])).status_code == 403


def test_any_two_plans_of_a_week_stand_against_each_other(client, changed):
    def plan_it():
        plan = ask_week_plan(
            business=changed.house.business, monday=at(2, 0).date(), at=SEVEN, by=changed.house.owner
        )
        return think_week_plan(week_plan=plan, limits=SolveLimits(iterations=20), at=SEVEN)

    one = plan_it()
    wanted(changed.house.farm)
    two = plan_it()
    page = text_of(client.get(reverse("plan_against", args=[two.pk, one.pk])))
    assert "put in" in page
    assert "not for the same list of visits" in page
    assert "The two plans are the same" in text_of(client.get(reverse("plan_against", args=[two.pk, two.pk])))


def test_plans_without_a_week_in_common_or_without_a_plan_do_not_compare(client, changed):
    made, waiting = out(client, changed), changed.asked(changed.lame())
    assert client.get(reverse("plan_against", args=[made.pk, waiting.pk])).status_code == 404
    made.monday = at(9, 0).date()
    made.save()
    think_replan(week_plan=waiting, limits=SolveLimits(iterations=5), at=SEVEN)
    assert client.get(reverse("plan_against", args=[made.pk, waiting.pk])).status_code == 404


def test_a_plan_that_was_not_made_anew_has_no_old_against_new(client, changed):
    plan = ask_week_plan(
        business=changed.house.business, monday=at(2, 0).date(), at=SEVEN, by=changed.house.owner
    )
    assert client.get(reverse("replan", args=[plan.pk])).status_code == 404


def test_a_visit_done_since_is_named_as_such(client, changed):
    plan = out(client, changed)
    word = changed.planned_again
    first = start_visit(visit=changed.visits["first"], checked=True, at=at(3, 9), by=changed.house.trimmer)
    finish(first, changed.house.trimmer, at(3, 10))
    later = word(changed.lame(), now=at(4, 7))
    assert "Finished" in text_of(client.get(reverse("plan_against", args=[later.pk, plan.pk])))


def queries_of(client, address):
    with CaptureQueriesContext(connection) as asked:
        assert client.get(address).status_code == 200
    return len(asked)


def test_old_against_new_asks_the_database_as_often_for_many_visits(client, changed):
    few = out(client, changed)
    first = queries_of(client, reverse("replan", args=[few.pk]))
    for n in range(8):
        farm = make_farm(changed.house.business, f"More {n}", by=changed.house.owner, latitude=f"54.{30 + n}")
        planned(farm, changed.second, at(5 + n % 2, 9 + 2 * (n // 2)), head_count=1)
    many = changed.planned_again(changed.lame())
    assert len(many.plan["shifts"]) > 1
    assert queries_of(client, reverse("replan", args=[many.pk])) == first <= 30


def test_a_van_that_is_back_is_said_so_on_its_page(client, changed):
    changed.asked(changed.out())
    page = client.get(reverse("vans"))
    assert "Crush broken" in text_of(page)
    row = VanOut.objects.within(changed.house.scope).get()
    client.post(reverse("van_back", args=[row.pk]))
    assert "Crush broken" not in text_of(client.get(reverse("vans")))


def test_a_farm_is_told_its_hour_from_the_page_of_its_visit(client, changed):
    first = changed.visits["first"]
    page = reverse("visit", args=[first.pk])
    assert "They know the hour" in text_of(client.get(page))
    client.post(reverse("visit_told", args=[first.pk]))
    assert "The farm knows the hour." in text_of(client.get(page))
