"""From the question on the phone to the confirmed visit, through the pages."""

import re
from datetime import datetime, time, timedelta
from itertools import pairwise

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from tests.factories import confirmed, make_farm, make_house, wanted
from trimops.kernel.clock import monday_of
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import HeldHour, Visit
from visits.services.ask_week_plan import ask_week_plan
from visits.services.think_week_plan import think_week_plan

SAID = {"reason": "urgent", "head_count": 2, "corrective_count": 1, "score": "UK0-3/2", "asked_by": "Phone"}
FIELD = re.compile(r'<input type="hidden" name="(\w+)" value="([^"]*)"')


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def desk(house):
    client = Client()
    client.force_login(house.office)
    return client


def when(house):
    return reverse("farm_when", args=[house.farm.pk])


def first_offer(desk, house):
    """What the first button of the list would send."""
    page = desk.get(when(house), SAID).content.decode()
    form = page.split(f'action="{reverse("offer_hold", args=[house.farm.pk])}"')[1].split("</form>")[0]
    return dict(FIELD.findall(form))


def hold(desk, house):
    answer = desk.post(reverse("offer_hold", args=[house.farm.pk]), first_offer(desk, house))
    assert answer.status_code == 302
    return HeldHour.objects.within(house.scope).get()


def test_the_question_is_asked_before_anything_is_worked_out(desk, house):
    page = desk.get(when(house))
    assert page.status_code == 200
    assert "found" not in page.context


def test_the_answer_is_the_title_and_each_place_says_what_it_adds(desk, house):
    page = desk.get(when(house), SAID)
    best = page.context["best"][0]
    title = re.search(r"<h1[^>]*>(.*?)</h1>", page.content.decode(), re.DOTALL).group(1)
    assert title.startswith("Low Croft: ")
    assert f"arrive between {timezone.localtime(best.first, house.business.zone):%H:%M} and" in title
    assert re.search(r"\+\d+ (min|h)[^<]*, \+[\d.]+ km, \+£[\d.]+", page.content.decode())


@pytest.mark.parametrize("wrong", [{"head_count": "0"}, {"corrective_count": "9"}, {"reason": "fun"}])
def test_what_makes_no_sense_is_said_at_its_field(desk, house, wrong):
    page = desk.get(when(house), {**SAID, **wrong})
    assert page.status_code == 400
    assert set(page.context["form"].errors) == set(wrong)


def test_a_place_is_held_and_its_page_says_until_when(desk, house):
    held = hold(desk, house)
    assert (held.farm, held.reason, held.head_count, held.mobility_score) == (house.farm, "urgent", 2, 2)
    assert held.until - held.held_at == timedelta(minutes=30)
    page = desk.get(reverse("held_hour", args=[held.pk])).content.decode()
    assert f"Held for Low Croft until {timezone.localtime(held.until, house.business.zone):%H:%M}" in page
    assert "Held now" in desk.get(when(house)).content.decode()


def test_the_same_press_twice_is_answered_with_what_to_do(desk, house):
    """The second finds room beside the first, or is told that somebody was quicker."""
    offer = first_offer(desk, house)
    for _ in range(2):
        answer = desk.post(reverse("offer_hold", args=[house.farm.pk]), offer)
        assert answer.status_code in (302, 409)
    hours = list(HeldHour.objects.within(house.scope).order_by("start"))
    assert all(one.finish <= two.start for one, two in pairwise(hours))


def test_taking_it_makes_the_visit(desk, house):
    held = hold(desk, house)
    answer = desk.post(reverse("held_take", args=[held.pk]), {"start": held.start.isoformat()})
    visit = Visit.objects.within(house.scope).get()
    assert answer["Location"] == reverse("visit", args=[visit.pk])
    assert (visit.state, visit.planned_start, visit.asked_by) == ("confirmed", held.start, "Phone")
    page = desk.get(reverse("held_hour", args=[held.pk])).content.decode()
    assert "has taken its hour" in page


def test_taking_it_at_an_hour_nobody_offered_changes_nothing(desk, house):
    held = hold(desk, house)
    wrong = (held.last_start + timedelta(minutes=20)).isoformat()
    answer = desk.post(reverse("held_take", args=[held.pk]), {"start": wrong})
    assert answer["Location"] == reverse("held_hour", args=[held.pk])
    assert not Visit.objects.within(house.scope).exists()


def test_letting_it_go_leads_back_to_the_question(desk, house):
    held = hold(desk, house)
    answer = desk.post(reverse("held_let_go", args=[held.pk]))
    assert answer["Location"] == when(house)
    assert desk.post(reverse("held_let_go", args=[held.pk])).status_code == 409


def test_a_place_that_is_gone_is_refused_in_words(desk, house):
    offer = first_offer(desk, house)
    other = make_farm(house.business, "High Croft", by=house.owner)
    day = datetime.fromisoformat(offer["first"])
    confirmed(other, house.van, day - timedelta(minutes=5), head_count=40)
    answer = desk.post(reverse("offer_hold", args=[house.farm.pk]), offer)
    assert answer.status_code == 409
    assert "not free any more" in answer.content.decode()


def test_a_full_diary_is_read_with_as_many_questions_as_an_empty_one(desk, house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    monday = monday_of(timezone.localdate()) + timedelta(days=7)

    def questions(day):
        start = datetime.combine(monday + timedelta(days=day), time(10), tzinfo=house.business.zone)
        confirmed(other, house.van, start, head_count=2)
        with CaptureQueriesContext(connection) as asked:
            assert desk.get(when(house), SAID).status_code == 200
        return len(asked)

    # The first page after signing in writes the session anew.
    desk.get(when(house), SAID)
    assert len({questions(day) for day in range(4)}) == 1


def test_what_the_farm_wants_already_is_shown(desk, house):
    visit = wanted(house.farm)
    assert reverse("visit", args=[visit.pk]) in desk.get(when(house)).content.decode()


def test_the_way_leads_from_the_farm_and_from_asking_for_a_visit(desk, house):
    for name in ("farm", "visit_ask"):
        assert when(house) in desk.get(reverse(name, args=[house.farm.pk])).content.decode()


def test_the_weeks_pages_bear_a_plan_with_a_held_hour(desk, house):
    held = hold(desk, house)
    # because: the plan is made from now on, and by the clock of the day the first hour may be today's, whose van is out
    for name in ("start", "first_start", "last_start", "due_from", "due_until"):
        setattr(held, name, getattr(held, name) + timedelta(days=7))
    held.save()
    desk.force_login(house.owner)
    visit = wanted(make_farm(house.business, "High Croft", by=house.owner), due_until=held.start.date())
    monday = monday_of(held.start.date())
    now = timezone.now()
    plan = ask_week_plan(business=house.business, monday=monday, at=now, by=house.owner)
    plan = think_week_plan(week_plan=plan, limits=SolveLimits(iterations=5), at=now)
    assert held.job in str(plan.plan["shifts"])
    pages = [f"{reverse('this_week')}?week={monday}", reverse("week_stop", args=[plan.pk, visit.pk])]
    for address in pages:
        assert desk.get(address, follow=True).status_code == 200, address
