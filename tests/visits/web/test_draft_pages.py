"""Striking, adding and counting on the page of the draft list, and the rules that it goes by."""

import re
from datetime import UTC, datetime, timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import (
    TUESDAY_TEN,
    confirmed,
    make_cow,
    make_farm,
    make_house,
    named,
    planned,
    under_way,
    wanted,
)
from trimops.kernel.clock import monday_of
from visits.domain.mobility import MobilityScale
from visits.models import DraftChange, Visit
from visits.selectors.draft_rules_in_use import rules_in_use
from visits.services.ask_visit import CowWish


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def desk(house):
    client = Client()
    client.force_login(house.office)
    return client


def send(desk, visit, **said):
    return desk.post(reverse("draft", args=[visit.pk]), said)


def at_ten(day):
    return datetime(day.year, day.month, day.day, 10, tzinfo=UTC)


def words_of(desk, visit):
    page = desk.get(reverse("draft", args=[visit.pk])).content.decode()
    return " ".join(re.sub(r"<[^>]+>", " ", page).split())


def test_a_cow_is_struck_added_and_taken_back_on_the_page(house, desk):
    visit = planned(house.farm, house.van, cows=[named(house.cow)], head_count=1)
    make_cow(house.farm, "7")
    assert send(desk, visit, act="strike", cow=house.cow.pk, why="sold on Friday").status_code == 302
    assert "Struck: 1 cow 101 sold on Friday, by Office of" in words_of(desk, visit)
    assert send(desk, visit, act="add", number="7", why="limps").status_code == 302
    assert "Asked for: 1 cow 7 added by Office of" in words_of(desk, visit)
    change = DraftChange.objects.within(house.scope).get(cow__number="101")
    assert send(desk, visit, act="back", change=change.pk).status_code == 302
    page = words_of(desk, visit)
    assert "Asked for: 2 cows" in page
    assert "Struck:" not in page


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ({"act": "add", "number": "999", "why": "limps"}, "No cow here goes by 999"),
        ({"act": "add", "number": "217", "why": "limps"}, "More than one cow goes by 217"),
        ({"act": "add", "number": "", "why": "limps"}, "Give the number of the cow."),
        ({"act": "add", "number": "7", "why": ""}, "Say why in a few words"),
        ({"act": "add", "number": "101", "why": "limps"}, "Cow 101 is on the list already."),
        ({"act": "count", "count": ""}, "Say how many cows."),
        ({"act": "dance"}, "dance"),
    ],
)
def test_what_cannot_be_is_said_and_nothing_changes(house, desk, said, words):
    visit = wanted(house.farm, cows=[named(house.cow)])
    for number in ("7", "217", "217"):
        make_cow(house.farm, number)
    answer = send(desk, visit, **said)
    assert answer.status_code in (400, 409)
    assert words in answer.content.decode()
    assert not DraftChange.objects.within(house.scope).exists()


def test_a_cow_of_another_farm_or_a_change_of_another_visit_is_not_there(house, desk):
    visit = wanted(house.farm)
    there = make_farm(house.business, "High Croft", by=house.owner)
    assert send(desk, visit, act="strike", cow=make_cow(there, "9").pk, why="sold").status_code == 404
    assert send(desk, visit, act="back", change=987).status_code == 404


def test_the_visit_counts_with_what_the_page_says(house, desk):
    lame = CowWish(house.cow, "walks badly", MobilityScale.UK, 2)
    visit = wanted(house.farm, cows=[lame], head_count=12)
    assert send(desk, visit, act="count", count=8).status_code == 302
    row = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (row.head_count, row.corrective_count) == (8, 1)


def test_a_list_that_outgrows_its_time_is_told_on_both_pages(house, desk):
    today = timezone.now().date()
    day, days = (
        monday_of(today) + timedelta(days=8),
        {"due_from": today, "due_until": today + timedelta(days=20)},
    )
    visit = confirmed(house.farm, house.van, at_ten(day), head_count=2, **days)
    there = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")
    planned(there, house.van, at_ten(day) + timedelta(hours=2), head_count=2, **days)
    send(desk, visit, act="add", cow=house.cow.pk, why="limps")
    assert "more than the time allows" not in words_of(desk, visit)
    for number in range(20):
        DraftChange.objects.create(
            business=house.business,
            visit=visit,
            cow=make_cow(house.farm, str(number)),
            kind="added",
            at=TUESDAY_TEN,
            by=house.client,
        )
    answer = send(desk, visit, act="count", count=21)
    assert "more than the time allows: ring the farm" in str(list(answer.wsgi_request._messages)[-1])
    for name in ("draft", "visit"):
        assert "more than the time allows" in desk.get(reverse(name, args=[visit.pk])).content.decode()
    pdf = desk.get(reverse("draft_list", args=[visit.pk]))
    assert pdf.status_code == 200


def test_once_the_work_began_nothing_can_be_pressed(house, desk):
    visit = under_way(house.farm, house.van, cows=[named(house.cow)])
    page = words_of(desk, visit)
    assert "The list stands" in page
    assert "Strike" not in page
    answer = send(desk, visit, act="strike", cow=house.cow.pk, why="sold")
    assert answer.status_code == 409
    assert "its draft list stands" in answer.content.decode()


def test_a_set_of_rules_is_chosen_and_its_days_are_made_the_farms_own(house, desk):
    address = reverse("draft_rules", args=[house.farm.pk])
    page = desk.get(address).content.decode()
    assert "Griffiths 2018" in page
    assert "common practice, no source" in page
    assert desk.post(address, {"rule_set": "spaced"}).status_code == 302
    assert desk.post(address, {"use_long_ago": "on", "trim_again_after": "120"}).status_code == 302
    using = rules_in_use(house.farm)
    assert (using.rule_set.id, using.rules.trim_again_after, using.rules.calving_warning) == (
        "spaced",
        120,
        28,
    )
    assert desk.post(address, {"rule_set": "spaced"}).status_code == 302
    assert not rules_in_use(house.farm).is_own


@pytest.mark.parametrize(
    "said", [{"rule_set": "moon"}, {"milk_from": "90", "milk_to": "80"}, {"score_counts": "-1"}]
)
def test_rules_that_make_no_sense_are_refused(house, desk, said):
    address = reverse("draft_rules", args=[house.farm.pk])
    assert desk.post(address, said).status_code == 400
    assert rules_in_use(house.farm).choice is None


def test_the_farm_strikes_and_adds_on_its_own_page_but_does_not_say_how_many_are_counted_with(house):
    visit = planned(house.farm, house.van, cows=[named(house.cow)], head_count=1)
    farm = Client()
    farm.force_login(house.client)
    address = reverse("portal_draft", args=[visit.pk])
    said = {"act": "strike", "cow": house.cow.pk, "why": "sold on Friday"}
    assert farm.post(address, said).status_code == 302
    (struck,) = DraftChange.objects.within(house.scope)
    assert struck.by == house.client
    assert farm.post(address, {"act": "count", "count": 90}).status_code == 403
    assert Visit.objects.within(house.scope).get(pk=visit.pk).head_count == 1
