"""The link at the end of a message."""

import pytest
from django.urls import reverse

from farms.models import Contact
from farms.selectors.stop_link import stop_link
from farms.services.save_contact import remove_contact
from trimops.tenancy.signed_numbers import signed_numbers


@pytest.fixture
def ann(house):
    fields = {"business": house.business, "farm": house.farm, "part": "Owner", "told_by": "mail"}
    return Contact.objects.create(name="Ann", email="ann@farm.example", **fields)


def path_of(contact):
    return stop_link(contact).removeprefix("http://localhost:8000")


def stopped(ann):
    return Contact.objects.within(ann.scope).get(pk=ann.pk).opted_out_at is not None


def test_looking_stops_nothing_and_the_button_does(ann, client):
    page = client.get(path_of(ann))
    assert page.status_code == 200
    assert "Low Croft" in page.content.decode()
    assert not stopped(ann)
    assert client.post(path_of(ann)).status_code == 302
    assert stopped(ann)
    assert "No more messages go to you" in client.get(path_of(ann)).content.decode()


def test_it_can_be_taken_back_by_the_same_link(ann, client):
    client.post(path_of(ann))
    client.post(path_of(ann), {"again": "1"})
    assert not stopped(ann)


@pytest.mark.parametrize("word", ["x", "1-aaaaaaaaaaaaaaaaaaaaaa", "-", "é-é"])
def test_a_word_that_is_none_of_ours_leads_nowhere(client, db, word):
    assert client.get(reverse("stop_messages", args=[word])).status_code == 404


def test_a_word_for_something_else_or_of_a_person_gone_leads_nowhere(ann, client):
    other = reverse("stop_messages", args=[signed_numbers("draft list", ann.pk)])
    assert client.post(other).status_code == 404
    path = path_of(ann)
    remove_contact(contact=ann)
    assert client.get(path).status_code == 404


def test_the_page_is_kept_nowhere_and_hands_no_address_on(ann, client):
    page = client.get(path_of(ann))
    assert page["Referrer-Policy"] == "no-referrer"
    assert "no-store" in page["Cache-Control"]
