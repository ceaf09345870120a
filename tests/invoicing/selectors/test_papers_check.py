"""Every issued paper is hashed anew, and every number looked for."""

import pytest
from django.apps import apps
from django.core.management import call_command
from django.db import connection

from invoicing.models import InvoicePapers, NumberSeries
from invoicing.models.issued_locks import missing_locks, unlock_issued
from invoicing.selectors.papers_check import book_faults
from tests.factories import make_house
from tests.invoicing.drafts import issue, plain_draft


@pytest.fixture
def house(house):
    for _ in range(2):
        issue(plain_draft(house), house)
    return house


@pytest.fixture
def unlocked(house):
    """The locks of the database are off, as somebody with its password could put them."""
    if connection.vendor == "sqlite":
        for lock in ("papers_stay", "issued_invoice_stays"):
            _sql(f"DROP TRIGGER {lock}")
    else:
        with connection.schema_editor() as editor:
            unlock_issued(apps, editor)
    return house


def _sql(statement):
    with connection.cursor() as cursor:
        cursor.execute(statement)


def said(house):
    return [str(fault) for fault in book_faults(house.scope)]


def test_whole_books_have_no_fault(house, capsys):
    assert said(house) == []
    call_command("check_papers")
    assert "no number is missing" in capsys.readouterr().out


def test_a_changed_document_is_told(unlocked):
    papers = InvoicePapers.objects.within(unlocked.scope)
    papers.filter(invoice__number="INV-2026-0001").update(ubl=b"<other/>")
    papers.filter(invoice__number="INV-2026-0002").update(pdf=b"", cii=b"")
    assert said(unlocked) == [
        "INV-2026-0001: its UBL is not the one that was issued",
        "INV-2026-0002: its PDF is not the one that was issued",
        "INV-2026-0002: its CII is not the one that was issued",
        "INV-2026-0002: has no PDF",
    ]


def test_a_gap_and_a_stranger_are_told(unlocked, capsys):
    NumberSeries.objects.within(unlocked.scope).update(last=3)
    _sql("UPDATE invoicing_invoice SET number = 'INV-7' WHERE number = 'INV-2026-0002'")
    with pytest.raises(SystemExit):
        call_command("check_papers")
    out = capsys.readouterr().out
    assert f"{unlocked.business}: INV-2026-0002: was given and is not there." in out
    assert f"{unlocked.business}: INV-2026-0003: was given and is not there." in out
    assert f"{unlocked.business}: INV-7: was given by no series." in out


def test_a_missing_lock_is_told(unlocked, capsys):
    with pytest.raises(SystemExit):
        call_command("check_papers")
    assert "the lock papers_stay is missing" in capsys.readouterr().out
    assert "issued_invoice_stays" in missing_locks(connection)


def test_another_business_is_not_looked_at(unlocked):
    InvoicePapers.objects.within(unlocked.scope).update(pdf=b"other")
    assert said(make_house("Fell & Beck")) == []
