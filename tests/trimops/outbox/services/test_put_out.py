"""A message is written with what causes it, or not at all, and each news once."""

from datetime import timedelta

import pytest
from django.core.exceptions import ValidationError
from django.db import transaction

from tests.factories import NOON, make_house
from tests.many_hands import ManyHands
from tests.trimops.outbox.messages import log, now, put
from trimops.errands.models import Errand
from trimops.outbox.models import Outgoing, OutgoingPart
from trimops.outbox.senders.ready import Part


def test_it_waits_with_its_words_its_papers_and_who_asked(house):
    paper = Part("a.pdf", "application/pdf", b"%PDF")
    row = now(put(house, by=house.office, subject="Tuesday\r\nBcc: x@example.invalid", parts=[paper]))
    assert (row.state, row.tries, row.subject) == ("waiting", 0, "Tuesday Bcc: x@example.invalid")
    assert log(row) == [("waiting", f"Asked for by {house.office}")]
    (kept,) = OutgoingPart.objects.within(house.scope).filter(outgoing=row)
    assert (kept.name, bytes(kept.content), kept.is_alternative) == ("a.pdf", b"%PDF", False)


def test_it_goes_once_the_transaction_is_committed(house, django_capture_on_commit_callbacks, mailoutbox):
    with django_capture_on_commit_callbacks(execute=True):
        row = put(house)
        assert not mailoutbox
    assert now(row).state == "went"
    assert [mail.to for mail in mailoutbox] == [["office@example.invalid"]]


def test_nothing_is_left_of_one_that_is_rolled_back(house, django_capture_on_commit_callbacks, mailoutbox):
    with django_capture_on_commit_callbacks(execute=True), transaction.atomic():
        put(house)
        transaction.set_rollback(True)
    assert not mailoutbox
    assert not Outgoing.objects.within(house.scope).exists()
    assert not Errand.objects.within(house.scope).exists()


def test_the_same_news_is_written_once_in_a_business(house):
    assert put(house, once="visit:7:moved") is not None
    assert put(house, once="visit:7:moved", address="other@example.invalid") is None
    assert put(house, once="visit:8:moved") is not None
    assert put(make_house("Far Side"), once="visit:7:moved") is not None
    assert put(house) is not None
    assert put(house) is not None
    assert Outgoing.objects.within(house.scope).count() == 4
    assert Errand.objects.within(house.scope).count() == 4


def test_what_waits_for_its_hour_is_not_begun_before(house, django_capture_on_commit_callbacks, mailoutbox):
    hour = NOON + timedelta(hours=7)
    with django_capture_on_commit_callbacks(execute=True):
        put(house, not_before=hour)
    assert not mailoutbox
    assert Errand.objects.within(house.scope).get().due_at == hour


def test_an_address_that_is_none_is_refused(house):
    with pytest.raises(ValidationError):
        put(house, address="  ")


@pytest.mark.django_db(transaction=True)
def test_two_at_the_same_moment_write_one(monkeypatch, tmp_path):
    house = make_house()

    def write(_):
        with transaction.atomic():
            return put(house, once="report:1:a@example.invalid", not_before=NOON) is not None

    def count(_):
        return Outgoing.objects.within(house.scope).count()

    hands = ManyHands(tmp_path, monkeypatch)
    # Alone first: the file's journal is set up by whoever opens it first, and no two can.
    assert hands(count, [0]) == [0]
    assert sorted(hands(write, range(4))) == [False, False, False, True]
    assert hands(count, [0]) == [1]
