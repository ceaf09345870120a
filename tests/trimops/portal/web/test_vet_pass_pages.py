"""Giving and closing a vet's link."""

import re
from html import unescape

from django.core import mail
from django.test import Client
from django.urls import reverse

from farms.models import FarmAccess, VetPass
from farms.services.close_farm_access import close_farm_access
from tests.factories import NOON
from trimops.accounts.roles import FarmRight

SAID = {"vet_name": "A. Vet", "email": "vet@vets.example", "shows": ["shows_reports"], "days": "14"}


def link_in(answer):
    return unescape(re.search(r"<code>(http[^<]+)</code>", answer.content.decode())[1])


def test_a_client_makes_a_link_that_opens_is_mailed_and_is_shown_once(
    house, client, django_capture_on_commit_callbacks
):
    with django_capture_on_commit_callbacks(execute=True):
        answer = client.post(reverse("portal_vet"), SAID)
    link = link_in(answer)
    assert answer["Cache-Control"] == "no-store"
    assert Client().get(link).status_code == 200
    assert link in mail.outbox[0].body
    assert link not in client.get(reverse("portal_vet")).content.decode()


def test_a_closed_link_opens_no_more(house, client):
    link = link_in(client.post(reverse("portal_vet"), {**SAID, "email": ""}))
    row = VetPass.objects.within(house.scope).get()
    client.post(reverse("portal_vet_close", args=[row.pk]))
    assert Client().get(link).status_code == 404
    assert "A. Vet" not in client.get(reverse("portal_vet")).content.decode().split("Let a vet in")[1]


def test_who_may_no_more_let_a_vet_in_keeps_no_link_for_themselves(house, client, rights):
    link = link_in(client.post(reverse("portal_vet"), SAID))
    rights(FarmRight.READS_REPORTS)
    assert Client().get(link).status_code == 404
    rights(*FarmRight)
    assert Client().get(link).status_code == 200
    close_farm_access(access=FarmAccess.objects.within(house.scope).get(), at=NOON)
    assert Client().get(link).status_code == 404


def test_a_link_that_would_show_nothing_is_not_made(house, client):
    answer = client.post(reverse("portal_vet"), {**SAID, "shows": []})
    assert answer.status_code == 400
    assert "shows" in answer.context["form"].errors
    assert not VetPass.objects.within(house.scope).exists()


def test_staff_make_and_close_one_on_the_farms_behalf(house):
    browser = Client()
    browser.force_login(house.trimmer)
    assert browser.post(reverse("vet_passes", args=[house.farm.pk]), SAID).status_code == 200
    row = VetPass.objects.within(house.scope).get()
    assert (row.farm, row.made_by) == (house.farm, house.trimmer)
    answer = browser.post(reverse("vet_pass_close", args=[row.pk]))
    assert answer["Location"] == reverse("vet_passes", args=[house.farm.pk])
