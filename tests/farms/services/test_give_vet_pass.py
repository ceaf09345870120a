"""A link for the vet: what it shows, until when, and that its secret is nowhere kept."""

from datetime import timedelta

import pytest
from django.core import mail
from django.utils import timezone

from farms.models import VetPass
from farms.services.give_vet_pass import PassMakesNoSense, VetWord, give_vet_pass, mail_vet_pass
from tests.factories import NOON
from trimops.kernel.secret_link import hash_of
from trimops.outbox.models import Outgoing


def give(house, shows=("shows_letters", "shows_cows"), days=30, email="vet@vets.example", at=NOON):
    word = VetWord("A. Vet", email, shows, days)
    return give_vet_pass(farm=house.farm, word=word, at=at, by=house.client)


def test_a_pass_shows_what_was_chosen_and_nothing_more_until_its_day(house):
    row = give(house).row
    assert (row.shows_letters, row.shows_cows) == (True, True)
    assert (row.shows_reports, row.shows_photos, row.shows_figures) == (False, False, False)
    assert row.is_open(NOON + timedelta(days=30, seconds=-1))
    assert not row.is_open(NOON + timedelta(days=30))


def test_the_secret_is_not_kept_and_two_are_never_alike(house):
    first, second = give(house), give(house)
    assert first.secret != second.secret
    assert len(first.secret) >= 43
    stored = VetPass.objects.within(house.scope).get(pk=first.row.pk)
    assert stored.secret_hash == hash_of(first.secret)
    assert first.secret not in str(vars(stored))


@pytest.mark.parametrize(
    ("shows", "days"),
    [((), 30), (("is_active",), 30), (("shows_cows",), 0), (("shows_cows",), 367)],
)
def test_a_pass_that_shows_nothing_or_never_ends_is_refused(house, shows, days):
    with pytest.raises(PassMakesNoSense):
        give(house, shows, days)
    assert not VetPass.objects.within(house.scope).exists()


def test_an_erased_farm_has_nothing_to_show(house):
    house.farm.erased_at = NOON
    with pytest.raises(PassMakesNoSense):
        give(house)


def test_the_vet_is_told_by_mail_once_it_is_kept(house, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        now = timezone.now()
        row = give(house, at=now).row
        for _ in range(2):
            mail_vet_pass(vet_pass=row, address="https://here.example/for-the-vet/secret/", at=now)
        assert mail.outbox == []
    (told,) = mail.outbox
    assert told.to == ["vet@vets.example"]
    assert "https://here.example/for-the-vet/secret/" in told.body
    assert f"until {now + timedelta(days=30):%-d %B %Y}, or" in told.body
    kept = Outgoing.objects.within(house.scope).get()
    assert (kept.topic, kept.farm_id, kept.secret) == ("vet", house.farm.pk, "")
    assert "for-the-vet" not in kept.body
    assert "no diagnosis" in told.body


def test_without_an_address_nobody_is_mailed(house, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks(execute=True):
        mail_vet_pass(vet_pass=give(house, email="").row, address="https://here.example/", at=NOON)
    assert mail.outbox == []
