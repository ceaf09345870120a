"""The desk where a business says what its farms are told."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import planned
from tests.visits.services.messages.told_farms import mailed, texted
from trimops.accounts.roles import Role
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules, MessageText

KINDS = [kind.value for kind in MessageKind]


@pytest.fixture
def desk(house):
    client = Client()
    client.force_login(house.memberships[Role.OFFICE].user)
    return client


def text_of(page):
    return page.content.decode()


def page_of(kind, **query):
    return reverse("message", args=[kind]) + "".join(f"?{key}={value}" for key, value in query.items())


def test_nothing_is_on_at_first_and_the_page_says_what_there_is(desk):
    page = text_of(desk.get(reverse("messages")))
    assert "Nothing goes to farms by itself yet" in page
    assert all(kind.label in page for kind in MessageKind)


@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_can_be_looked_at_without_any_visit_and_with_one(house, desk, kind):
    assert "a farm is made up" in text_of(desk.get(page_of(kind)))
    planned(house.farm, house.van, timezone.now() + timedelta(days=2))
    page = text_of(desk.get(page_of(kind)))
    assert "On the next visit in the diary" in page
    assert "Low Croft" in page


def test_a_kind_that_there_is_none_of_is_not_found(desk):
    assert desk.get(page_of("tuesday")).status_code == 404


def test_switched_on_and_off(house, desk):
    desk.post(page_of("booked"), {"switch": "on"})
    assert MessageRules.objects.within(house.scope).get().switched_on == ["booked"]
    assert "1 kind of message goes" in text_of(desk.get(reverse("messages")))
    desk.post(page_of("booked"), {"switch": "off"})
    assert MessageRules.objects.within(house.scope).get().switched_on == []


def test_a_text_is_looked_at_before_it_is_kept(house, desk):
    word = {"subject": "Hullo {farm}", "body": "We come on {day}.", "short": "{day}", "look": "1"}
    page = text_of(desk.post(page_of("booked"), word))
    assert "Hullo Low Croft" in page
    assert "Not kept yet" in page
    assert not MessageText.objects.within(house.scope).exists()
    del word["look"]
    assert desk.post(page_of("booked"), word).status_code == 302
    assert "Hullo Low Croft" in text_of(desk.get(page_of("booked")))


def test_a_place_that_there_is_none_of_is_refused_and_nothing_typed_is_lost(house, desk):
    page = desk.post(page_of("booked"), {"subject": "Hullo {cow}", "body": "My long words", "short": ""})
    assert page.status_code == 400
    assert "There is no {cow} here" in text_of(page)
    assert "My long words" in text_of(page)
    assert not MessageText.objects.within(house.scope).exists()


def test_a_text_in_another_language_writes_its_days_in_it(house, desk):
    word = {"subject": "Klauenpflege {day}", "body": "", "short": ""}
    desk.post(page_of("booked", language="de"), word)
    kept = MessageText.objects.within(house.scope).get()
    assert (kept.language, kept.subject, kept.body) == ("de", "Klauenpflege {day}", "")
    assert "Deutsch" in text_of(desk.get(reverse("messages")))
    assert "Klauenpflege" in text_of(desk.get(page_of("booked", language="de")))
    assert "Klauenpflege" not in text_of(desk.get(page_of("booked")))


def test_what_somebody_types_is_shown_and_never_run(desk):
    word = {"subject": "<script>x</script> {farm}", "body": "{{ 7|add:7 }}", "short": "", "look": "1"}
    assert desk.post(page_of("booked"), word).status_code == 400
    word["body"] = "<b>bold</b>"
    page = text_of(desk.post(page_of("booked"), word))
    assert "<script>x" not in page
    assert "<b>bold" not in page


def test_the_hours_are_kept_and_tomorrow_is_not_told_in_the_night(house, desk):
    word = {"quiet_from": "21:00", "quiet_until": "06:30", "tomorrow_at": "22:00", "late_minutes": "30"}
    page = desk.post(reverse("messages"), word)
    assert page.status_code == 400
    assert "left in peace at that hour" in text_of(page)
    desk.post(reverse("messages"), {**word, "tomorrow_at": "17:30"})
    rules = MessageRules.objects.within(house.scope).get()
    assert (f"{rules.tomorrow_at:%H:%M}", rules.late_minutes) == ("17:30", 30)


def test_the_page_counts_who_is_told(house, desk):
    mailed(house)
    texted(house)
    mailed(house, "Gone", opted_out_at=timezone.now())
    page = text_of(desk.get(reverse("messages")))
    assert "1 person is told by e-mail, 1 person by SMS" in page
    assert "1 person asked for no more" in page
