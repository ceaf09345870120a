"""What is kept of a person and for how long, through the pages."""

import io
import zipfile

import pytest
from django.test import Client
from django.urls import reverse

from farms.models import Contact
from trimops.accounts.roles import Role
from trimops.portal.models import RetentionRules

PERIODS = {
    "books_years": 10,
    "trail_years": 11,
    "bank_files_months": 120,
    "photos_months": 24,
    "crush_months": 36,
    "herd_lists_months": 12,
    "messages_months": 14,
    "links_months": 24,
    "watches_months": 36,
    "errands_days": 14,
}


@pytest.fixture
def owner(house):
    browser = Client()
    browser.force_login(house.owner)
    return browser


def names(answer):
    return zipfile.ZipFile(io.BytesIO(b"".join(answer.streaming_content))).namelist()


def test_the_owner_says_how_long_things_are_kept(house, owner):
    assert b"common practice, no source" in owner.get(reverse("retention")).content
    assert owner.post(reverse("retention"), PERIODS).status_code == 302
    assert RetentionRules.objects.within(house.scope).get().books_years == 10
    assert b"Said by" in owner.get(reverse("retention")).content


@pytest.mark.parametrize(
    "change", [{"photos_months": 0}, {"bank_files_months": 60}, {"trail_years": 9}, {"books_years": ""}]
)
def test_what_is_wrong_stands_at_its_field_and_nothing_typed_is_lost(house, owner, change):
    answer = owner.post(reverse("retention"), {**PERIODS, **change})
    assert answer.status_code == 400
    assert set(answer.context["form"].errors) >= {*change} - {"books_years"}
    assert b'value="24"' in answer.content
    assert not RetentionRules.objects.within(house.scope).exists()


def test_everybody_takes_their_own_data_out(house):
    for person in (house.trimmer, house.office, house.client):
        browser = Client()
        browser.force_login(person)
        assert person.email.encode() in browser.get(reverse("own_data")).content
        answer = browser.post(reverse("own_data_all"))
        assert answer["Cache-Control"] == "private, no-store"
        assert {"account.json", "membership.json", "read me.txt"} <= set(names(answer))


def test_the_owner_hands_over_a_persons_data_and_erases_them(house, owner):
    pk = house.memberships[Role.OFFICE].pk
    assert "account.json" in names(owner.post(reverse("person_data_all", args=[pk])))
    address = reverse("person_erase", args=[pk])
    assert b"What stays, and why" in owner.get(address).content
    assert owner.post(address, {"typed_name": ""}).status_code == 400
    assert owner.post(address, {"typed_name": "Nobody"}).status_code == 409
    assert owner.post(address, {"typed_name": house.office.name}).status_code == 302
    house.office.refresh_from_db()
    assert not house.office.is_active


def test_a_person_at_a_farm_is_given_theirs(house, owner):
    contact = Contact.objects.create(business=house.business, farm=house.farm, name="Herd", part="Owner")
    answer = owner.post(reverse("contact_data_all", args=[house.farm.pk, contact.pk]))
    assert names(answer) == ["read me.txt", "contact.json"]
