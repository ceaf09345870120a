"""Who at a farm is told, how, and in which language."""

import pytest
from django.test import Client
from django.urls import reverse

from farms.models import Contact
from tests.factories import NOON
from trimops.accounts.roles import Role

ANN = {"name": "Ann", "part": "Owner", "phone": "", "email": "", "told_by": "", "language": "en"}


@pytest.fixture
def desk(house):
    client = Client()
    client.force_login(house.memberships[Role.OFFICE].user)
    return client


def put_on(desk, house, **more):
    return desk.post(reverse("contacts", args=[house.farm.pk]), {**ANN, **more})


def test_somebody_is_told_by_mail_in_welsh_and_the_farm_s_page_says_so(house, desk):
    assert put_on(desk, house, told_by="mail", email="ann@farm.example", language="cy").status_code == 302
    page = desk.get(reverse("farm", args=[house.farm.pk])).content.decode()
    assert "told of visits by e-mail, Cymraeg" in page


@pytest.mark.parametrize(
    ("told_by", "wants"), [("mail", "an address is needed"), ("sms", "a number is needed")]
)
def test_a_way_without_an_address_is_refused_and_says_what_to_mend(house, desk, told_by, wants):
    page = put_on(desk, house, told_by=told_by)
    assert page.status_code == 400
    assert wants in page.content.decode()
    assert not Contact.objects.within(house.scope).exists()


def test_somebody_is_mended(house, desk):
    put_on(desk, house)
    ann = Contact.objects.within(house.scope).get()
    address = reverse("contact", args=[house.farm.pk, ann.pk])
    assert desk.get(address).status_code == 200
    desk.post(address, {**ANN, "phone": "0199 555 020", "told_by": "sms"})
    assert Contact.objects.within(house.scope).get().address_told == "0199 555 020"


def test_who_wants_none_is_shown_as_such_and_stays_so(house, desk):
    put_on(desk, house, told_by="mail", email="ann@farm.example")
    ann = Contact.objects.within(house.scope).get()
    ann.opted_out_at = NOON
    ann.save()
    address = reverse("contact", args=[house.farm.pk, ann.pk])
    assert "wants no messages about visits" in desk.get(address).content.decode()
    desk.post(address, {**ANN, "told_by": "mail", "email": "other@farm.example"})
    assert Contact.objects.within(house.scope).get().address_told == ""
    assert "wants no messages since" in desk.get(reverse("farm", args=[house.farm.pk])).content.decode()
