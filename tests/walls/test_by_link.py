"""Addresses that are their own key: not guessed, not kept in caches, not handed on to others, not in the log."""

import logging
from urllib.parse import urlsplit

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from farms.models import Farm
from farms.services.give_vet_pass import SHOWS, VetWord, give_vet_pass
from invoicing.models import Invoice
from invoicing.services.make_invoice_link import make_invoice_link
from tests.walls.routes import BY_LINK, every_pattern
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invitation_token, invite_person
from trimops.kernel.secret_link import new_secret
from trimops.portal.services.make_link import LinkKind, make_link
from trimops.settings.hide_secrets import hide_secrets

OTHER_PARTS = {"pk": 1, "uid": "0" * 8 + "-0000-0000-0000-" + "0" * 12, "form": "cii"}


def kept_to_itself(answer):
    """Neither a cache between nor another site learns the address (ASVS 14.2.1, 14.2.2, 3.4.5)."""
    assert answer["Referrer-Policy"] in ("no-referrer", "same-origin")
    assert "private" in answer["Cache-Control"] or "no-store" in answer["Cache-Control"]


def kwargs_of(name, secret):
    (pattern,) = [pattern for pattern in every_pattern() if pattern.name == name]
    parts = {**OTHER_PARTS, "secret": secret, "token": secret}
    return {part: parts[part] for part in pattern.pattern.converters}


@pytest.mark.parametrize("name", sorted(BY_LINK))
def test_a_wrong_key_opens_nothing_and_stands_in_no_log(name, db, caplog):
    caplog.set_level(logging.DEBUG)
    secret = new_secret()
    address = reverse(name, kwargs=kwargs_of(name, secret))
    answer = Client().get(address)
    assert answer.status_code in (404, 409, 410)
    kept_to_itself(answer)
    assert secret not in hide_secrets(address)
    assert secret not in "".join(
        record.getMessage() for record in caplog.records if "SELECT" not in record.msg
    )


@pytest.fixture
def right(mine):
    """An address of each kind that a page is behind."""
    house, now = mine.house, timezone.now()
    guest = Guest("by-link@example.invalid", "A Guest", Role.OFFICE)
    asked = invite_person(business=house.business, guest=guest, at=now, by=house.owner)
    farm = Farm.objects.within(house.scope).get(pk=mine.keys["farm"])
    given = give_vet_pass(farm=farm, word=VetWord("A. Vet", "", SHOWS, 30), at=now, by=house.owner)
    bill = Invoice.objects.within(house.scope).get(pk=mine.keys["issued"])
    return {
        "invitation": reverse("invitation", args=[invitation_token(asked)]),
        "come_in_by_link": reverse(
            "come_in_by_link", args=[make_link(user=house.client, kind=LinkKind.TOLD)]
        ),
        "calendar_feed": reverse("calendar_feed", args=[mine.secret]),
        "vet_desk": reverse("vet_desk", args=[given.secret]),
        "invoice_by_link": urlsplit(make_invoice_link(invoice=bill, at=now).address).path,
    }


def test_a_right_key_is_kept_to_itself_as_well(right, db):
    for name, address in right.items():
        answer = Client().get(address)
        assert answer.status_code == 200, name
        kept_to_itself(answer)
        key = max(address.removesuffix(".ics").split("/"), key=len)
        # 43 signs of 64 are 256 bits; of the link to come in 16 bytes are a signature, the rest says whose it is.
        assert len(key) >= (38 if name == "come_in_by_link" else 43), name
        assert key not in hide_secrets(address), name
        assert b'href="http' not in answer.content, name
