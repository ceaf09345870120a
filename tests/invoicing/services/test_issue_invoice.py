"""A draft becomes an invoice: numbered without a gap, dated, drawn, frozen."""

import hashlib
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest
from django.db import transaction
from stdnum.iso11649 import is_valid

from farms.models import Payer
from invoicing.documents.invoice_check import InvoiceIncomplete
from invoicing.models import BilledWork, FarmTerms, Invoice, InvoiceLine, MoneyRules, NumberSeries
from invoicing.selectors.invoice_content import invoice_content
from invoicing.services.credit_invoice import draft_credit_note
from invoicing.services.issue_invoice import (
    AlreadyIssued,
    DraftGone,
    MorePaidThanBilled,
    NothingToBill,
    TotalsDiffer,
)
from tests.factories import NOON, make_house, make_prices
from tests.invoicing.drafts import draft, issue, plain_draft
from tests.many_hands import ManyHands

THREADS = 8


@pytest.fixture
def house(db):
    return make_house()


def make_payer(house, days):
    return Payer.objects.create(
        business=house.business, name="The Estate", address="Estate Office", payment_days=days
    )


def test_an_issued_invoice_is_numbered_dated_and_due(house):
    row = Invoice.objects.within(house.scope).get(pk=issue(plain_draft(house), house).pk)
    assert (row.state, row.number, row.issued_by) == ("issued", "INV-2026-0001", house.office)
    assert (row.issued_on, row.due_on) == (date(2026, 3, 2), date(2026, 4, 1))


@pytest.mark.parametrize("kind", ["invoice", "credit_note"])
def test_all_that_was_handed_back_is_stored(house, kind):
    # Only what issuing sets is written: nothing may be set and not written.
    house.farm.payer = make_payer(house, 7)
    house.farm.save()
    row = issue(plain_draft(house), house)
    if kind == "credit_note":
        told = {"reason": "Agreed.", "work_may_be_billed_again": False}
        note = draft_credit_note(invoice=row, asks=None, at=NOON, by=house.office, **told)
        row = issue(note, house, NOON + timedelta(days=1))
    stored = Invoice.objects.within(house.scope).get(pk=row.pk)
    for field in Invoice._meta.concrete_fields:
        assert getattr(stored, field.attname) == getattr(row, field.attname), field.name


def test_its_paper_is_a_pdf_frozen_with_its_fingerprint(house):
    row = Invoice.objects.within(house.scope).get(pk=issue(plain_draft(house), house).pk)
    assert bytes(row.papers.pdf).startswith(b"%PDF-")
    assert row.papers.pdf_sha256 == hashlib.sha256(bytes(row.papers.pdf)).hexdigest()


def test_parties_are_frozen_as_they_were(house):
    row = issue(plain_draft(house), house)
    house.business.name = "Another Name"
    house.business.save()
    stored = Invoice.objects.within(house.scope).get(pk=row.pk)
    assert (stored.seller["name"], stored.buyer["name"]) == ("Ash & Rye Foot Trimming", "Low Croft")


def test_a_payer_is_billed_in_the_farms_place_at_its_own_terms(house):
    payer = make_payer(house, 7)
    house.farm.payer = payer
    house.farm.save()
    row = issue(plain_draft(house), house)
    assert (row.buyer["name"], row.due_on) == ("The Estate", date(2026, 3, 9))


def test_a_payer_who_pays_at_once_is_due_the_same_day(house):
    house.farm.payer = make_payer(house, 0)
    house.farm.save()
    assert issue(plain_draft(house), house).due_on == NOON.date()


def test_the_terms_of_the_farm_come_before_those_of_its_payer(house):
    house.farm.payer = make_payer(house, 7)
    house.farm.save()
    FarmTerms.objects.create(business=house.business, farm=house.farm, payment_days=14)
    assert issue(plain_draft(house), house).due_on == date(2026, 3, 16)


def test_it_can_be_paid_by_its_own_creditor_reference_and_is_open(house):
    row = issue(plain_draft(house), house)
    assert is_valid(row.creditor_reference)
    assert row.creditor_reference.endswith("INV20260001")
    assert (row.is_open, row.open_amount) == (True, 12)


def test_a_number_too_long_for_a_creditor_reference_is_issued_without_one(house):
    MoneyRules.objects.create(business=house.business, invoice_prefix="TWELVESIGNS1")
    NumberSeries.objects.create(business=house.business, prefix="TWELVESIGNS1", year=2026, last=99_999)
    row = issue(plain_draft(house), house)
    assert (row.number, row.creditor_reference) == ("TWELVESIGNS1-2026-100000", "")


def test_a_discount_for_prompt_payment_is_frozen_as_printed(house):
    rules = MoneyRules.objects.create(
        business=house.business, cash_discount_percent=2, cash_discount_days=10, credit_terms="Ask us."
    )
    row = issue(plain_draft(house), house)
    rules.cash_discount_percent, rules.credit_terms = 0, "Other words."
    rules.save()
    paper = invoice_content(Invoice.objects.within(house.scope).get(pk=row.pk))
    assert paper.cash_discount == "Discount for prompt payment: 2 % when paid by 12 March 2026."
    assert paper.payment.credit_terms == "Ask us."


def test_it_is_dated_in_the_zone_of_the_business(house):
    house.business.timezone = "Pacific/Auckland"
    house.business.save()
    row = issue(plain_draft(house), house, at=datetime(2026, 12, 31, 20, tzinfo=UTC))
    assert (row.issued_on, row.number) == (date(2027, 1, 1), "INV-2027-0001")


def test_numbers_follow_each_other_within_a_year_and_begin_anew_in_the_next(house):
    days = [NOON, NOON, NOON + timedelta(days=365), NOON]
    numbers = [issue(plain_draft(house), house, at).number for n, at in enumerate(days)]
    assert numbers == ["INV-2026-0001", "INV-2026-0002", "INV-2027-0001", "INV-2026-0003"]


def test_each_business_counts_for_itself(house):
    theirs = make_house("Fell & Beck")
    assert (
        issue(plain_draft(house), house).number
        == issue(plain_draft(theirs), theirs).number
        == "INV-2026-0001"
    )


def test_the_second_press_of_the_button_is_refused_and_changes_nothing(house):
    invoice = plain_draft(house)
    issue(invoice, house)
    before = Invoice.objects.within(house.scope).values().get()
    with pytest.raises(AlreadyIssued, match="INV-2026-0001"):
        issue(invoice, house)
    assert Invoice.objects.within(house.scope).values().get() == before
    assert NumberSeries.objects.within(house.scope).get().last == 1


def test_a_draft_without_lines_is_refused_and_takes_no_number(house):
    empty = plain_draft(house)
    InvoiceLine.objects.within(house.scope).filter(invoice=empty).delete()
    with pytest.raises(NothingToBill):
        issue(empty, house)
    assert issue(plain_draft(house), house).number == "INV-2026-0001"


def test_a_paper_that_lacks_what_the_law_wants_is_refused_in_words_and_takes_no_number(house):
    house.business.vat_number = ""
    house.business.save()
    house.farm.address = ""
    house.farm.save()
    with pytest.raises(InvoiceIncomplete) as refused:
        issue(plain_draft(house), house)
    assert "VAT number" in refused.value.message
    assert "buyer" in refused.value.message
    assert not Invoice.objects.within(house.scope).issued().exists()
    assert not NumberSeries.objects.within(house.scope).exists()


def test_a_draft_whose_totals_are_not_those_of_its_lines_is_refused(house):
    wrong = plain_draft(house)
    InvoiceLine.objects.within(house.scope).filter(invoice=wrong).update(quantity=2, net=20)
    with pytest.raises(TotalsDiffer, match="save it once more"):
        issue(wrong, house)


def test_more_paid_before_than_is_billed_would_stand_on_no_account(house):
    row = plain_draft(house, "10.00", prepaid=Decimal("12.01"))
    row.payable = row.gross - row.prepaid
    row.save()
    with pytest.raises(MorePaidThanBilled, match="note the rest as a payment"):
        issue(row, house)


def test_a_credit_note_counts_for_the_tax_on_the_day_it_is_issued(house):
    bill = issue(plain_draft(house), house)
    note = plain_draft(house, corrects=bill, reason="A cow counted twice")
    later = NOON + timedelta(days=40)
    assert issue(note, house, later).tax_point == later.date()


def test_a_draft_that_was_taken_away_is_refused_in_words(house):
    gone = plain_draft(house)
    Invoice.objects.within(house.scope).get().delete()
    with pytest.raises(DraftGone):
        issue(gone, house)


def test_work_of_a_visit_is_held_by_the_issued_invoice(house):
    make_prices(house.business)
    row = issue(draft(house), house)
    held = BilledWork.objects.within(house.scope).filter(invoice=row, holds=True)
    assert sorted(held.values_list("line__item", flat=True)) == ["block", "call_out", "corrective"]


def test_what_is_taken_back_gives_its_number_back(house):
    issue(plain_draft(house), house)
    lost = plain_draft(house)
    with pytest.raises(ZeroDivisionError), transaction.atomic():
        assert issue(lost, house).number == "INV-2026-0002"
        raise ZeroDivisionError
    assert issue(plain_draft(house), house).number == "INV-2026-0002"
    assert issue(lost, house).number == "INV-2026-0003"


@pytest.fixture
def many_hands(transactional_db, tmp_path, monkeypatch):
    return ManyHands(tmp_path, monkeypatch)


def numbers_stored(scope):
    """Numbers of the issued invoices in order, and the last number each series gave out."""
    issued = Invoice.objects.within(scope).issued().order_by("number").values_list("number", flat=True)
    series = NumberSeries.objects.within(scope).values_list("last", flat=True)
    return list(issued), list(series)


@pytest.mark.django_db(transaction=True)
def test_eight_who_issue_at_the_same_moment_get_eight_numbers_without_a_gap(many_hands):
    house = make_house()
    drafts = [plain_draft(house) for number in range(THREADS)]
    numbers = many_hands(lambda invoice: issue(invoice, house).number, drafts)
    expected = [f"INV-2026-{n:04d}" for n in range(1, THREADS + 1)]
    assert sorted(numbers) == expected
    assert many_hands(numbers_stored, [house.scope]) == [(expected, [THREADS])]


@pytest.mark.django_db(transaction=True)
def test_eight_who_press_the_same_button_issue_one_invoice(many_hands):
    house = make_house()
    invoice = plain_draft(house)

    def press(_):
        try:
            return issue(invoice, house).number
        except AlreadyIssued:
            return "refused"

    answers = many_hands(press, range(THREADS))
    assert sorted(answers) == ["INV-2026-0001"] + ["refused"] * (THREADS - 1)
    assert many_hands(numbers_stored, [house.scope]) == [(["INV-2026-0001"], [1])]
