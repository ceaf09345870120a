"""Credit notes that are issued: to whom, against what, and never for more than was billed."""

from decimal import Decimal

import pytest

from invoicing.models import Allocation, Invoice
from invoicing.services.refuse_over_credit import CreditsTooMuch, refuse_over_credit
from tests.factories import make_house
from tests.invoicing.drafts import issue, plain_draft


def note(original, house, net):
    return plain_draft(house, net, corrects=original, reason="Billed too much")


@pytest.fixture
def bill(house):
    return issue(plain_draft(house, "100.00"), house)


def test_a_credit_note_has_its_own_number_points_back_and_goes_to_the_same_buyer(bill, house):
    house.farm.name = "High Croft"
    house.farm.save()
    row = issue(note(bill, house, "30.00"), house)
    assert (row.number, row.corrects, row.creditor_reference) == ("CN-2026-0001", bill, "")
    assert row.buyer == bill.buyer
    assert row.due_on == row.issued_on


def test_it_is_set_off_at_once_where_the_invoice_is_open(bill, house):
    row = issue(note(bill, house, "30.00"), house)
    bill.refresh_from_db()
    assert (row.settled, row.is_open, bill.settled, bill.is_open) == (36, False, 36, True)
    issue(note(bill, house, "70.00"), house)
    bill.refresh_from_db()
    assert (bill.settled, bill.is_open, bill.open_amount) == (120, False, 0)


def test_where_the_invoice_is_paid_it_stays_open_to_be_paid_back(bill, house):
    Invoice.objects.within(house.scope).filter(pk=bill.pk).update(settled=120, is_open=False)
    row = issue(note(bill, house, "30.00"), house)
    assert (row.is_open, row.open_amount) == (True, 36)
    assert not Allocation.objects.within(house.scope).exists()


def test_the_second_of_two_that_together_credit_too_much_is_refused(bill, house):
    first, second = note(bill, house, "60.00"), note(bill, house, "50.00")
    issue(first, house)
    with pytest.raises(CreditsTooMuch, match=r"only 40\.00 GBP without tax"):
        issue(second, house)
    assert issue(note(bill, house, "40.00"), house).number == "CN-2026-0002"


def test_the_rounding_of_the_last_note_takes_up_the_cent_of_the_taxes_before(bill, house):
    """Thirds of 100.00 have taxes of 6.67 each, together a cent more than the 20.00 of the whole."""
    for net in ("33.33", "33.33"):
        issue(note(bill, house, net), house)
    last = note(bill, house, "33.34")
    with pytest.raises(CreditsTooMuch, match=r"only 40\.00 GBP can still"):
        issue(last, house)
    rows = Invoice.objects.within(house.scope).filter(pk=last.pk)
    rows.update(rounding=Decimal("-0.01"), payable=Decimal("40.00"))
    issue(last, house)
    bill.refresh_from_db()
    assert (bill.open_amount, bill.is_open) == (0, False)


def test_a_draft_is_changed_and_not_credited(house):
    original = plain_draft(house)
    with pytest.raises(CreditsTooMuch, match="change the draft"):
        refuse_over_credit(credit_note=note(original, house, "5.00"), original=original)


def test_what_another_business_credited_does_not_count(bill, house):
    theirs = make_house("Fell & Beck")
    other = issue(plain_draft(theirs, "100.00"), theirs)
    issue(note(other, theirs, "100.00"), theirs)
    refuse_over_credit(credit_note=note(bill, house, "100.00"), original=bill)
