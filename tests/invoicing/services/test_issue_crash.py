"""Issuing breaks off at any point: nothing is half done, and the number comes back.

A step that raises stands for a crash in the process; the kill of a process is in tests/services/test_issue_kill.py.
"""

import pytest
from django.db import OperationalError, connection

from invoicing.models import Invoice, InvoicePapers, NumberSeries
from invoicing.services import issue_invoice as issuing
from invoicing.services import keep_papers as keeping
from tests.factories import make_house
from tests.invoicing.drafts import issue, plain_draft
from tests.many_hands import ManyHands

MANY_PAGES = 1_000_000


@pytest.fixture
def house(db):
    return make_house()


class Broken(Exception):
    """Whatever may happen."""


def breaks(*args, **kwargs):
    raise Broken


def then_breaks(step):
    """Does its work, and the process breaks off right after it."""

    def call(*args, **kwargs):
        step(*args, **kwargs)
        raise Broken

    return call


STEPS = [
    *((issuing, name) for name in ("take_number", "creditor_reference", "keep_papers")),
    *((keeping, name) for name in ("invoice_content", "cii_xml", "ubl_xml", "hybrid_pdf", "fingerprint")),
    *((Invoice, name) for name in ("full_clean", "save")),
    *((InvoicePapers, name) for name in ("full_clean", "save")),
]


@pytest.mark.parametrize("way", [lambda step: breaks, then_breaks], ids=["before", "after"])
def test_a_crash_at_any_step_leaves_the_draft_and_takes_no_number(house, monkeypatch, way):
    draft = plain_draft(house)
    before = Invoice.objects.within(house.scope).values().get()
    for where, name in STEPS:
        with monkeypatch.context() as patched, pytest.raises(Broken):
            patched.setattr(where, name, way(getattr(where, name)))
            issue(draft, house)
        assert Invoice.objects.within(house.scope).values().get() == before, name
        assert not NumberSeries.objects.within(house.scope).exists(), name
        assert not InvoicePapers.objects.within(house.scope).exists(), name
    assert issue(draft, house).number == "INV-2026-0001"


@pytest.mark.parametrize("name", ["let_go_of_work", "set_off_credit"])
def test_a_credit_note_that_cannot_be_set_off_is_not_issued(house, monkeypatch, name):
    bill = issue(plain_draft(house, "100.00"), house)
    note = plain_draft(house, "30.00", corrects=bill, reason="Billed too much")
    with monkeypatch.context() as patched, pytest.raises(Broken):
        patched.setattr(issuing, name, then_breaks(getattr(issuing, name)))
        issue(note, house)
    bill.refresh_from_db()
    assert (bill.settled, Invoice.objects.within(house.scope).issued().count()) == (0, 1)
    assert issue(note, house).number == "CN-2026-0001"


@pytest.mark.django_db(transaction=True)
@pytest.mark.skipif(connection.vendor != "sqlite", reason="SQLite says how large its file may become")
def test_a_full_disk_at_any_page_leaves_the_draft_and_the_next_try_gets_the_number(tmp_path, monkeypatch):
    """`PRAGMA max_page_count` gives the file one page more each time, until the invoice finds room."""
    house = make_house()
    first, second = plain_draft(house), plain_draft(house)

    def fill(_):
        issue(first, house)
        refusals = 0
        while said := _refusal(second, house):
            assert said == "database or disk is full"
            refusals += 1
            rows = Invoice.objects.within(house.scope)
            assert (rows.issued().count(), rows.drafts().count()) == (1, 1)
            assert InvoicePapers.objects.within(house.scope).count() == 1
            assert NumberSeries.objects.within(house.scope).get().last == 1
            _pragma(f"max_page_count = {_pragma('page_count') + refusals}")
        return refusals, _pragma("integrity_check"), rows.get(pk=second.pk).number

    ((refusals, integrity, number),) = ManyHands(tmp_path, monkeypatch)(fill, [None])
    assert refusals >= 5
    assert (integrity, number) == ("ok", "INV-2026-0002")


def _refusal(draft, house):
    """What the database said; empty once the invoice is issued."""
    if _pragma("max_page_count") > MANY_PAGES:
        _pragma(f"max_page_count = {_pragma('page_count')}")
    try:
        issue(draft, house)
    except OperationalError as refused:
        return str(refused)
    return ""


def _pragma(words):
    with connection.cursor() as cursor:
        cursor.execute(f"PRAGMA {words}")
        return cursor.fetchone()[0]
