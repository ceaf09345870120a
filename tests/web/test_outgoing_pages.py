"""What leaves the house, for each of the staff what they may see, with nothing secret on it."""

from datetime import timedelta
from html import unescape

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_house
from tests.trimops.outbox.messages import in_state, now, put
from trimops.outbox.domain.outgoing_states import Channel, Topic


@pytest.fixture
def house(db):
    return make_house()


def signed_in(user):
    client = Client()
    client.force_login(user)
    return client


@pytest.fixture
def owner(house):
    return signed_in(house.owner)


def page(client, name, *keys, **query):
    return unescape(client.get(reverse(name, args=keys), query).content.decode())


def test_the_list_begins_with_what_did_not_go(house, owner):
    assert "<h1>No message was sent yet</h1>" in page(owner, "outgoing_list")
    row = in_state(house, "failed", last_words="550 5.1.1 no such person here")
    put(house, address="waits@example.invalid")
    shown = page(owner, "outgoing_list")
    assert "<h1>1 message did not go</h1>" in shown
    assert "550 5.1.1 no such person here" in shown
    assert f'href="{reverse("outgoing", args=[row.pk])}"' in shown
    assert "waits@" not in shown


def test_it_is_narrowed_by_state_way_and_what_it_is_about(house, owner):
    put(house, address="mail@example.invalid")
    put(house, channel=Channel.SMS, topic=Topic.REPORT, address="07700 900123")
    assert "mail@" not in page(owner, "outgoing_list", by="sms")
    assert "07700" in page(owner, "outgoing_list", about="report", show="waiting")
    assert "07700" not in page(owner, "outgoing_list", about="visit")
    assert "07700" in page(owner, "outgoing_list", about="nonsense", by="nonsense", show="nonsense")


def test_a_trimmer_sees_all_but_the_money(house):
    bill, visit = put(house, topic=Topic.REMINDER, address="bill@example.invalid"), put(house)
    trimmer, office = signed_in(house.trimmer), signed_in(house.office)
    assert "bill@" in page(office, "outgoing_list")
    assert "bill@" not in page(trimmer, "outgoing_list")
    assert "Payment reminder" not in page(trimmer, "outgoing_list")
    assert (trimmer.get(reverse("outgoing", args=[bill.pk])).status_code) == 404
    assert trimmer.post(reverse("outgoing_leave", args=[bill.pk])).status_code == 404
    assert "At ten." in page(trimmer, "outgoing", visit.pk)
    assert reverse("sent_paper", args=[visit.pk]) not in page(office, "outgoing", visit.pk)


def test_what_another_program_is_told_of_an_invoice_is_not_shown_to_a_trimmer(house):
    told = put(house, topic=Topic.EVENT, address="https://books.example/", body='{"payable":"410.00"}')
    trimmer, office = signed_in(house.trimmer), signed_in(house.office)
    assert "books.example" not in page(trimmer, "outgoing_list", show="all")
    assert trimmer.get(reverse("outgoing", args=[told.pk])).status_code == 404
    assert "410.00" in page(office, "outgoing", told.pk)


def test_the_link_that_only_the_receiver_is_told_is_not_on_the_page(house, owner):
    row = put(house, body="Come in:\n\n{secret}\n", secret="https://here.example/only-for-them")
    shown = page(owner, "outgoing", row.pk)
    assert "only-for-them" not in shown
    assert "<p>…</p>" in shown
    assert "only-for-them" not in page(owner, "outgoing_list")


def test_one_message_tells_each_step_and_may_be_tried_again_or_left(house, owner):
    row = in_state(house, "failed", last_words="The line broke.", may_have_gone=True)
    shown = page(owner, "outgoing", row.pk)
    assert "so they may have it" in shown
    owner.post(reverse("outgoing_again", args=[row.pk]))
    assert now(row).state == "waiting"
    assert owner.post(reverse("outgoing_again", args=[row.pk])).status_code == 409
    assert owner.post(reverse("outgoing_leave", args=[row.pk]))["Location"] == reverse("outgoing_list")
    assert now(row).state == "left"
    assert f"Left by {house.owner}" in page(owner, "outgoing", row.pk)


def test_what_cannot_go_again_has_no_button_but_says_why(house, owner):
    row = in_state(house, "failed", body="{secret}")
    shown = page(owner, "outgoing", row.pk)
    assert reverse("outgoing_again", args=[row.pk]) not in shown
    assert "make a new one where this one was made" in shown
    assert owner.post(reverse("outgoing_again", args=[row.pk])).status_code == 409


def test_all_that_waits_and_may_be_seen_is_tried_on_a_press(
    house, django_capture_on_commit_callbacks, mailoutbox
):
    in_state(house, "waiting", tries=3, next_try_at=timezone.now() + timedelta(hours=3))
    put(house, topic=Topic.INVOICE, address="bill@example.invalid")
    with django_capture_on_commit_callbacks(execute=True):
        answer = signed_in(house.trimmer).post(reverse("outgoing_now"), follow=True)
    assert [mail.to for mail in mailoutbox] == [["office@example.invalid"]]
    assert "Tried now: 1." in answer.content.decode()


def test_another_businesss_messages_are_not_there(owner):
    row = put(make_house("Far Side"))
    assert owner.get(reverse("outgoing", args=[row.pk])).status_code == 404
    for name in ("outgoing_again", "outgoing_leave"):
        assert owner.post(reverse(name, args=[row.pk])).status_code == 404


def test_the_foot_of_every_page_leads_there_but_not_for_a_farm(house, owner):
    there = f'href="{reverse("outgoing_list")}"'
    assert there in page(owner, "this_week")
    assert there not in page(signed_in(house.client), "portal_home")
