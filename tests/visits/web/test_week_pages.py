"""The page of the week: the whole of it at one look, a day of it near by."""

from datetime import UTC, datetime, timedelta
from decimal import Decimal

import pytest
from django.test import Client
from django.urls import reverse

from tests.visits.services.by_hand import hand_week
from trimops.kernel.clock import monday_of
from visits.models import WeekPlan
from visits.services.accept_week_plan import accept_week_plan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.lock_stop import LockOn, lock_stop
from visits.services.move_stop import StopMove, move_stop


@pytest.fixture
def week(db):
    now = datetime.now(UTC).replace(microsecond=0)
    monday = monday_of(now.date()) + timedelta(days=7)
    return hand_week(now, due_from=monday, due_until=monday + timedelta(days=11))


@pytest.fixture
def client(week):
    client = Client()
    client.force_login(week.house.owner)
    return client


def page_of(client, week, **more):
    return client.get("/week/", {"week": week.plan.monday.isoformat(), **more})


def test_every_van_and_day_has_its_row_used_or_not(client, week):
    rows = page_of(client, week).context["view"].board.rows
    assert [row.shift.id for row in rows] == sorted(
        (shift["id"] for shift in week.plan.problem["shifts"]), key=lambda name: (name[-10:], name)
    )
    assert sum(len(row.stops) for row in rows) == len(week.visits)


def test_the_sums_are_those_of_the_plan(client, week):
    view, plan = page_of(client, week).context["view"], week.plan.plan
    assert view.visits == len(week.visits)
    assert view.cows == sum(visit.head_count for visit in week.visits)
    assert view.km == pytest.approx(sum(shift["km"] for shift in plan["shifts"]))
    assert view.work_minutes == pytest.approx(sum(s["work_minutes"] for s in plan["shifts"]), abs=5)
    assert view.money == Decimal(str(plan["cost"]["shifts"])).quantize(Decimal(1)) / 100


def test_the_day_asked_for_is_the_day_shown_with_its_map(client, week):
    used = week.plan.plan["shifts"][-1]["id"][-10:]
    page = page_of(client, week, day=used)
    assert page.context["view"].chosen.view.day.isoformat() == used
    assert page.context["view"].chosen.map.startswith("<svg")


@pytest.mark.parametrize("day", ["", "nonsense", "2020-01-01"])
def test_without_a_day_of_this_week_the_first_that_a_van_goes_out_is_shown(client, week, day):
    first = min(shift["id"][-10:] for shift in week.plan.plan["shifts"])
    assert page_of(client, week, day=day).context["view"].chosen.view.day.isoformat() == first


def test_a_day_on_which_nobody_goes_out_says_so(client, week):
    used = {shift["id"][-10:] for shift in week.plan.plan["shifts"]}
    free = next(s["id"][-10:] for s in week.plan.problem["shifts"] if s["id"][-10:] not in used)
    assert b"No van goes out on this day." in page_of(client, week, day=free).content


def test_a_locked_stop_bears_the_word(client, week):
    visit = week.visits[0]
    lock_stop(week_plan=week.plan, visit=visit, on=LockOn.DAY, at=week.plan.asked_at, by=week.house.owner)
    day = week.spot(visit)[0][-10:]
    assert b"Locked" in page_of(client, week, day=day).content


def test_a_change_in_hand_is_shown_before_the_plan_in_the_diary(client, week):
    accepted = accept_week_plan(week_plan=week.plan, at=week.plan.asked_at, by=week.house.owner)
    visit = week.visits[0]
    move = StopMove(visit, week.other_shift(visit), 0, "Moved it")
    version = move_stop(week_plan=accepted, move=move, at=week.plan.asked_at, by=week.house.owner)
    page = page_of(client, week)
    assert (page.context["week_plan"], page.context["earlier"]) == (version, [accepted])
    assert b"Moved it" in page.content
    answer = client.post(reverse("week_plan_bring_back", args=[accepted.pk]))
    assert answer.status_code == 302
    assert page_of(client, week).context["week_plan"] == accepted


def test_while_it_thinks_the_page_can_be_told_to_stop(client, week):
    plan = ask_week_plan(
        business=week.house.business, monday=week.plan.monday, at=week.plan.asked_at, by=week.house.owner
    )
    plan.cost_history = [[0.1, 90000.0], [0.5, 80000.0]]
    plan.save()
    page = client.get(reverse("week_plan", args=[plan.pk]))
    assert b"Stop now and keep the best so far" in page.content
    assert b"From \xc2\xa3900 to \xc2\xa3800" in page.content
    state = client.get(reverse("week_plan_state", args=[plan.pk])).json()
    assert (state["done"], state["chart"].startswith("<svg")) == (False, True)
    client.post(reverse("week_plan_enough", args=[plan.pk]))
    assert WeekPlan.objects.within(week.house.scope).get(pk=plan.pk).stop_asked_at is not None
    assert b"Stop now" not in client.get(reverse("week_plan", args=[plan.pk])).content


def test_the_sheet_of_a_day_is_one_pdf_page_for_a_van_that_goes_out(client, week):
    used = week.plan.plan["shifts"][0]["id"]
    answer = client.get(reverse("day_sheet", args=[week.plan.pk, used]))
    assert (answer.status_code, answer["Content-Type"]) == (200, "application/pdf")
    free = {s["id"] for s in week.plan.problem["shifts"]} - {s["id"] for s in week.plan.plan["shifts"]}
    assert client.get(reverse("day_sheet", args=[week.plan.pk, free.pop()])).status_code == 404


def test_a_day_that_the_plan_does_not_have_stands_on_the_board_as_the_diary_has_it(client, week):
    """As on Wednesday, when the rest of the week is planned again and Monday is done."""
    plan = accept_week_plan(week_plan=week.plan, at=week.plan.asked_at, by=week.house.owner)
    day = min(shift["id"][-10:] for shift in plan.plan["shifts"])
    gone = [shift for shift in plan.plan["shifts"] if shift["id"].endswith(day)]
    stops = sum(len(shift["stops"]) for shift in gone)
    plan.problem["shifts"] = [s for s in plan.problem["shifts"] if not s["id"].endswith(day)]
    plan.plan["shifts"] = [s for s in plan.plan["shifts"] if not s["id"].endswith(day)]
    plan.save()
    page = page_of(client, week, day=day)
    view = page.context["view"]
    diary = [shift for each in view.days for shift in each.shifts if shift.is_diary]
    assert {shift.id for shift in diary} == {shift["id"] for shift in gone}
    assert sum(len(shift.stops) for shift in diary) == stops
    assert view.visits == len(week.visits) - stops, "the sums are the plan's"
    assert page.context["in_diary"] == []
    assert b"as the diary has it" in page.content


def test_a_week_without_a_plan_is_laid_out_as_the_diary_has_it(client, week):
    accept_week_plan(week_plan=week.plan, at=week.plan.asked_at, by=week.house.owner)
    starts = [stop["start"] for shift in week.plan.plan["shifts"] for stop in shift["stops"]]
    WeekPlan.objects.within(week.house.scope).update(state="set_aside")
    page = page_of(client, week)
    view = page.context["view"]
    shown = sorted(block.stop.start for row in view.board.rows for block in row.stops)
    assert shown == sorted(datetime.fromisoformat(start) for start in starts)
    assert view.chosen.map.startswith("<svg")
    assert page.context["in_diary"] == []
    assert f"{len(starts)} visits in the diary" in page.content.decode()
    assert b"data-week" not in page.content, "there is no plan to move a stop in"


def test_a_week_in_which_nothing_stands_says_what_to_do_next(client, week):
    page = client.get("/week/", {"week": "2031-03-03"})
    assert page.context["view"] is None
    assert page.status_code == 200
