"""A farm asks, is offered hours, holds one, takes it."""

import re
from datetime import timedelta
from html import unescape

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_cow, make_farm, make_house, planned
from trimops.kernel.clock import at_local, local_day, monday_of
from visits.models import HeldHour, Visit

HIDDEN = re.compile(r'<input type="hidden" name="(\w+)" value="([^"]*)">')


@pytest.fixture
def today(house):
    return local_day(timezone.now(), house.business.zone)


@pytest.fixture
def neighbour(house, today):
    """Another farm's visit, planned for the middle of every working day of next week."""
    farm = make_farm(house.business, "High Croft", by=house.owner)
    monday = monday_of(today) + timedelta(days=7)
    for day in range(5):
        start = at_local(
            monday + timedelta(days=day), timezone.datetime.min.time().replace(hour=11), house.business.zone
        )
        planned(farm, house.van, start, due_from=monday, due_until=monday + timedelta(days=9), head_count=4)
    return farm


def lame(today, **more):
    return {
        **{"what": "urgent", "cow_1": "101", "score_1": "UK0-3/2", "since_1": today - timedelta(days=3)},
        **{"more": 0, **more},
    }


def routine(today, **more):
    monday = monday_of(today) + timedelta(days=7)
    days = {"due_from": monday, "due_until": monday + timedelta(days=6)}
    return {"what": "routine", "head_count": 10, **days, **more}


def offers(client, said):
    """The page, and the fields of its first form that holds an hour."""
    page = client.get(reverse("portal_offers"), said).content.decode()
    form = re.search(rf'action="{reverse("portal_hold")}">(.*?)</form>', page, re.S)
    return page, dict(HIDDEN.findall(unescape(form[1]))) if form else {}


def held_of(house):
    return HeldHour.objects.within(house.scope).get()


def test_from_the_lame_cow_to_the_confirmed_hour(house, client, today):
    _, first = offers(client, lame(today, more=1))
    answer = client.post(reverse("portal_hold"), first)
    held = held_of(house)
    assert answer["Location"] == reverse("portal_held", args=[held.pk])
    assert (held.head_count, held.corrective_count, held.mobility_score) == (2, 1, 2)
    page = client.get(answer["Location"]).content.decode()
    assert "101, score 2 (UK 0 to 3), lame since" in page
    office = Client()
    office.force_login(house.office)
    assert (
        "score 2 (UK 0 to 3), lame since" in office.get(reverse("held_hour", args=[held.pk])).content.decode()
    )
    client.post(reverse("portal_take", args=[held.pk]), {"start": held.start.isoformat()})
    visit = Visit.objects.within(house.scope).get()
    assert (visit.state, visit.planned_start, visit.asked_by) == ("confirmed", held.start, house.client.name)
    assert "Confirmed: " in client.get(answer["Location"]).content.decode()
    assert [row.cow for row in visit.asked_cows.within(house.scope)] == [house.cow]


def test_no_other_farm_is_named_nor_money_nor_metres(house, client, today, neighbour):
    page, fields = offers(client, routine(today))
    assert "On the way from the farm before" in page
    client.post(reverse("portal_hold"), fields)
    home = client.get(reverse("portal_home")).content.decode()
    held = client.get(reverse("portal_held", args=[held_of(house).pk])).content.decode()
    for shown in (page, home, held, client.get(reverse("portal_ask")).content.decode()):
        assert not re.search(r"High Croft|£|\bkm\b|Van 1", shown)
    assert not {"moved", "to_van", "to_day"} & fields.keys()


def test_an_hour_that_somebody_else_took_leads_back_to_the_others_with_what_was_asked(house, client, today):
    _, fields = offers(client, lame(today))
    answer = client.post(
        reverse("portal_hold"), {**fields, "first": "2020-01-01T10:00Z", "last": "2020-01-01T11:00Z"}
    )
    assert answer["Location"].startswith(reverse("portal_offers") + "?")
    assert "not free any more" in client.get(answer["Location"]).content.decode()
    assert not HeldHour.objects.within(house.scope).exists()


def test_a_cow_who_is_not_on_the_list_is_told_of_and_holds_nothing_up(house, client, today):
    client.post(reverse("portal_wish"), lame(today, cow_2="999", score_2="S1-5/5"))
    visit = Visit.objects.within(house.scope).get()
    assert (visit.state, visit.head_count) == ("wanted", 2)
    assert visit.note == "Cow 999 (not on the herd list), score 5 (Sprecher 1 to 5)."
    assert (visit.mobility_scale, visit.mobility_score) == ("S1-5", 5)
    assert visit.due_until == today, "the worst of them wants to be seen the same day"


def test_another_farms_cow_of_that_number_is_not_taken_for_theirs(house, client, today):
    make_cow(make_farm(house.business, "High Croft", by=house.owner), "777")
    client.post(reverse("portal_wish"), lame(today, cow_1="777"))
    visit = Visit.objects.within(house.scope).get()
    assert not visit.asked_cows.within(house.scope).exists()
    assert "777 (not on the herd list)" in visit.note


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({"cow_1": ""}, "Fill this in."),
        ({"since_1": "2999-01-01"}, "has not come yet"),
        ({"since_1": "2001-01-01"}, "more than a year ago"),
        ({"score_2": "UK0-3/2"}, "Which cow is this?"),
        ({"score_1": "UK0-3/9"}, "Select a valid choice"),
    ],
)
def test_what_cannot_be_is_said_at_its_field(client, today, said, words):
    answer = client.get(reverse("portal_offers"), lame(today, **said))
    assert answer.status_code == 400
    assert words in answer.content.decode()


def test_a_routine_visit_says_which_offers_are_not_on_a_day_that_suits(client, today):
    page, fields = offers(client, routine(today, weekdays=[2]))
    assert "Wed " in page
    assert "not one of your days" in page
    assert fields["weekdays"] == "2"


@pytest.mark.parametrize("far", ["0001-01-01T00:00Z", "9999-12-31T23:00Z", "2099-01-01T09:00Z"])
def test_hours_that_no_page_wrote_break_nothing(house, client, today, far):
    place = {"van": house.van.pk, "first": far, "last": far}
    answer = client.post(reverse("portal_hold"), {**lame(today), **place})
    assert answer["Location"].startswith(reverse("portal_offers"))
    assert not HeldHour.objects.within(house.scope).exists()


def test_nobody_fills_the_list_with_wishes_and_the_business_with_mail(house, client, today, settings):
    settings.ACCOUNT_RATE_LIMITS = {**settings.ACCOUNT_RATE_LIMITS, "leave_wish": "2/d/user"}
    statuses = [client.post(reverse("portal_wish"), lame(today)).status_code for _ in range(3)]
    assert statuses == [302, 302, 429]
    assert Visit.objects.within(house.scope).count() == 2


def test_a_routine_visit_without_end_is_not_asked_for(house, client, today):
    assert client.post(reverse("portal_wish"), routine(today, due_until="9999-12-31")).status_code == 400
    assert not Visit.objects.within(house.scope).exists()


@pytest.mark.parametrize(("days", "words"), [(-1, "That day is over"), (200, "too far ahead")])
def test_a_routine_visit_is_asked_for_within_four_months(client, today, days, words):
    day = today + timedelta(days=days)
    page, _ = offers(client, routine(today, due_from=day, due_until=day))
    assert words in page


def test_when_nothing_is_free_the_wish_can_be_left(house, client, today):
    house.van.is_active = False
    house.van.save()
    page, fields = offers(client, lame(today))
    assert "No hour is free" in page
    assert fields == {}
    client.post(reverse("portal_wish"), lame(today), follow=True)
    assert Visit.objects.within(house.scope).get().state == "wanted"


def test_an_hour_that_is_let_go_is_free_again_and_one_not_held_cannot_be_taken(house, client, today):
    client.post(reverse("portal_hold"), offers(client, lame(today))[1])
    held = held_of(house)
    assert client.post(reverse("portal_let_go", args=[held.pk])).status_code == 302
    take = client.post(reverse("portal_take", args=[held.pk]), {"start": held.start.isoformat()}, follow=True)
    assert "is let go" in take.content.decode()
    assert not Visit.objects.within(house.scope).exists()


def test_a_van_of_another_business_is_no_place(house, client, today):
    other = make_house("Fell & Beck")
    _, fields = offers(client, lame(today))
    client.post(reverse("portal_hold"), {**fields, "van": other.van.pk})
    assert not HeldHour.objects.within(house.scope).exists()
    assert not HeldHour.objects.within(other.scope).exists()
