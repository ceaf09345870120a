"""Parts and invitations on the owner's page."""

import re

import pytest
from django.core import mail
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import House, make_house
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invitation_token, invite_person


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def client(house):
    client = Client()
    client.force_login(house.owner)
    return client


def invited(house):
    guest = Guest("new@example.invalid", "A New One", Role.OFFICE)
    return invite_person(business=house.business, guest=guest, at=timezone.now(), by=house.owner)


def test_a_part_is_changed_and_counts_from_the_next_page_on(house, client):
    place = house.memberships[Role.OFFICE]
    other = Client()
    other.force_login(house.office)
    assert other.get(reverse("invoice_list")).status_code == 200
    assert client.post(reverse("part", args=[place.pk]), {"role": "trimmer"}).status_code == 302
    assert other.get(reverse("invoice_list")).status_code == 403


def test_the_last_owner_cannot_take_their_own_part_away(house, client):
    place = house.memberships[Role.OWNER]
    answer = client.post(reverse("part", args=[place.pk]), {"role": "office"})
    assert answer.status_code == 409
    assert "without an owner" in answer.content.decode()
    assert client.get(reverse("people")).status_code == 200


@pytest.mark.parametrize("role", ["farm", "", "king"])
def test_no_other_part_than_those_of_the_business_is_taken(house, client, role):
    place = house.memberships[Role.OFFICE]
    assert client.post(reverse("part", args=[place.pk]), {"role": role}).status_code == 400
    assert Membership.objects.get(pk=place.pk).role == Role.OFFICE


def test_a_farm_clients_part_is_not_changed_here(house, client):
    assert client.get(reverse("part", args=[house.memberships[Role.FARM].pk])).status_code == 404


def test_an_invitation_sent_again_kills_the_link_before(house, client, django_capture_on_commit_callbacks):
    place = invited(house)
    old = reverse("invitation", args=[invitation_token(place)])
    assert Client().get(old).status_code == 200
    with django_capture_on_commit_callbacks(execute=True):
        assert client.post(reverse("invitation_again", args=[place.pk])).status_code == 302
    assert Client().get(old).status_code == 409
    (link,) = re.findall(r"/people/come-in/\S+", mail.outbox[-1].body)
    assert Client().get(link).status_code == 200


def test_an_invitation_is_withdrawn_in_its_own_words(house, client):
    place = invited(house)
    link = reverse("invitation", args=[invitation_token(place)])
    page = client.get(reverse("membership_end", args=[place.pk])).content.decode()
    assert "Withdraw the invitation of A New One" in page
    client.post(reverse("membership_end", args=[place.pk]))
    assert Client().get(link).status_code == 409
