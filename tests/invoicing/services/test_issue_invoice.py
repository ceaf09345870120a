"""A draft becomes an invoice: numbered without a gap, dated, drawn, frozen."""

import hashlib
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, date, datetime, timedelta
from threading import Barrier

import pytest
from django.db import connection, connections, transaction

from farms.models import Payer
from invoicing.documents.invoice_check import InvoiceIncomplete
from invoicing.models import Invoice, InvoiceLine, NumberSeries
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import AlreadyIssued, NothingToBill, issue_invoice
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_house,
    make_prices,
    put_down,
    under_way,
)

THREADS = 8


def draft(house, number=0):
    """The draft of a visit of its own; `number` keeps their days apart."""
    visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=number))
    put_down(visit, house.cow, blocked_foot())
    return draft_invoice(visit=finish(visit, house.trimmer), at=NOON)


def make_payer(house, days):
    return Payer.objects.create(
        business=house.business, name="The Estate", address="Estate Office", payment_days=days
    )


def issue(invoice, house, at=NOON):
    return issue_invoice(invoice=invoice, at=at, by=house.office)


@pytest.fixture
def priced(house):
    make_prices(house.business)
    return house


def test_an_issued_invoice_is_numbered_dated_and_due(priced):
    row = Invoice.objects.within(priced.scope).get(pk=issue(draft(priced), priced).pk)
    assert (row.state, row.number, row.issued_by) == ("issued", "INV-2026-0001", priced.office)
    assert (row.issued_on, row.due_on) == (date(2026, 3, 2), date(2026, 4, 1))


def test_its_paper_is_a_pdf_frozen_with_its_fingerprint(priced):
    row = Invoice.objects.within(priced.scope).get(pk=issue(draft(priced), priced).pk)
    assert bytes(row.papers.pdf).startswith(b"%PDF-")
    assert row.papers.pdf_sha256 == hashlib.sha256(bytes(row.papers.pdf)).hexdigest()


def test_parties_are_frozen_as_they_were(priced):
    row = issue(draft(priced), priced)
    priced.business.name = "Another Name"
    priced.business.save()
    stored = Invoice.objects.within(priced.scope).get(pk=row.pk)
    assert (stored.seller["name"], stored.buyer["name"]) == ("Ash & Rye Foot Trimming", "Low Croft")


def test_a_payer_is_billed_in_the_farms_place_at_its_own_terms(priced):
    payer = make_payer(priced, 7)
    priced.farm.payer = payer
    priced.farm.save()
    row = issue(draft(priced), priced)
    assert (row.buyer["name"], row.due_on) == ("The Estate", date(2026, 3, 9))


def test_a_payer_who_pays_at_once_is_due_the_same_day(priced):
    priced.farm.payer = make_payer(priced, 0)
    priced.farm.save()
    assert issue(draft(priced), priced).due_on == NOON.date()


def test_it_is_dated_in_the_zone_of_the_business(priced):
    priced.business.timezone = "Pacific/Auckland"
    priced.business.save()
    row = issue(draft(priced), priced, at=datetime(2026, 12, 31, 20, tzinfo=UTC))
    assert (row.issued_on, row.number) == (date(2027, 1, 1), "INV-2027-0001")


def test_numbers_follow_each_other_within_a_year_and_begin_anew_in_the_next(priced):
    days = [NOON, NOON, NOON + timedelta(days=365), NOON]
    numbers = [issue(draft(priced, n), priced, at).number for n, at in enumerate(days)]
    assert numbers == ["INV-2026-0001", "INV-2026-0002", "INV-2027-0001", "INV-2026-0003"]


def test_each_business_counts_for_itself(priced):
    theirs = make_house("Fell & Beck")
    make_prices(theirs.business)
    assert issue(draft(priced), priced).number == issue(draft(theirs), theirs).number == "INV-2026-0001"


def test_the_second_press_of_the_button_is_refused_and_changes_nothing(priced):
    invoice = draft(priced)
    issue(invoice, priced)
    before = Invoice.objects.within(priced.scope).values().get()
    with pytest.raises(AlreadyIssued, match="INV-2026-0001"):
        issue(invoice, priced)
    assert Invoice.objects.within(priced.scope).values().get() == before
    assert NumberSeries.objects.within(priced.scope).get().last == 1


def test_a_draft_without_lines_is_refused_and_takes_no_number(priced):
    empty = draft(priced)
    InvoiceLine.objects.within(priced.scope).filter(invoice=empty).delete()
    with pytest.raises(NothingToBill):
        issue(empty, priced)
    assert issue(draft(priced, 1), priced).number == "INV-2026-0001"


def test_a_paper_that_lacks_what_the_law_wants_is_refused_in_words_and_takes_no_number(priced):
    priced.business.vat_number = ""
    priced.business.save()
    priced.farm.address = ""
    priced.farm.save()
    with pytest.raises(InvoiceIncomplete) as refused:
        issue(draft(priced), priced)
    assert "VAT number" in refused.value.message
    assert "buyer" in refused.value.message
    assert not Invoice.objects.within(priced.scope).issued().exists()
    assert not NumberSeries.objects.within(priced.scope).exists()


def test_what_is_taken_back_gives_its_number_back(priced):
    issue(draft(priced), priced)
    lost = draft(priced, 1)
    with pytest.raises(ZeroDivisionError), transaction.atomic():
        assert issue(lost, priced).number == "INV-2026-0002"
        raise ZeroDivisionError
    assert issue(draft(priced, 2), priced).number == "INV-2026-0002"
    assert issue(lost, priced).number == "INV-2026-0003"


@pytest.fixture
def many_hands(transactional_db, tmp_path, monkeypatch):
    """Runs one call per argument at the same moment, each on a database connection of its own."""
    copy = tmp_path / "copy.sqlite3"

    def hand(call, argument, start):
        try:
            start.wait()
            return call(argument)
        finally:
            connection.close()

    def run(call, arguments):
        if connection.vendor == "sqlite" and not copy.exists():
            # The test database lives in memory, where writers do not wait for one another. The hands get what
            # stands in it as a file, which is what the program runs on; look at the outcome through a hand too.
            with connection.cursor() as cursor:
                cursor.execute("VACUUM INTO %s", [str(copy)])
            monkeypatch.setitem(connections.databases["default"], "NAME", str(copy))
        start = Barrier(len(arguments))
        with ThreadPoolExecutor(len(arguments)) as hands:
            return list(hands.map(lambda argument: hand(call, argument, start), arguments))

    return run


def numbers_stored(scope):
    """Numbers of the issued invoices in order, and the last number each series gave out."""
    issued = Invoice.objects.within(scope).issued().order_by("number").values_list("number", flat=True)
    series = NumberSeries.objects.within(scope).values_list("last", flat=True)
    return list(issued), list(series)


@pytest.mark.django_db(transaction=True)
def test_eight_who_issue_at_the_same_moment_get_eight_numbers_without_a_gap(many_hands):
    house = make_house()
    make_prices(house.business)
    drafts = [draft(house, number) for number in range(THREADS)]
    numbers = many_hands(lambda invoice: issue(invoice, house).number, drafts)
    expected = [f"INV-2026-{n:04d}" for n in range(1, THREADS + 1)]
    assert sorted(numbers) == expected
    assert many_hands(numbers_stored, [house.scope]) == [(expected, [THREADS])]


@pytest.mark.django_db(transaction=True)
def test_eight_who_press_the_same_button_issue_one_invoice(many_hands):
    house = make_house()
    make_prices(house.business)
    invoice = draft(house)

    def press(_):
        try:
            return issue(invoice, house).number
        except AlreadyIssued:
            return "refused"

    answers = many_hands(press, range(THREADS))
    assert sorted(answers) == ["INV-2026-0001"] + ["refused"] * (THREADS - 1)
    assert many_hands(numbers_stored, [house.scope]) == [(["INV-2026-0001"], [1])]
