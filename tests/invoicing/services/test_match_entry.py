"""A booking becomes a payment once."""

from datetime import date
from decimal import Decimal

import pytest

from invoicing.models import BankEntry, BankFile, BankStatement, Payment
from invoicing.services.match_entry import EntryIsDone, match_entry, match_entry_paid_back
from invoicing.services.set_against import CannotSettle
from invoicing.services.set_aside_entry import set_aside_entry
from invoicing.services.take_back_payment import take_back_payment
from tests.factories import NOON
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import note

BOOKED_ON = date(2026, 2, 20)


def booking(house, amount="100", form="camt053", **fields):
    """One booking on the account, put down without a file to read."""
    number = BankEntry.objects.within(house.scope).count()
    told = {"kept_at": NOON, "kept_by": house.office, "content": b"x"}
    file = BankFile.objects.create(business=house.business, file_name="f", sha256=f"{number}", **told)
    statement = BankStatement.objects.create(
        business=house.business, file=file, form=form, read_at=NOON, read_by=house.office
    )
    told = {"key": f"k{number}", "booked_on": BOOKED_ON, "charges": Decimal(0), **fields}
    told.setdefault("currency", house.business.currency)
    return BankEntry.objects.create(
        business=house.business, statement=statement, amount=Decimal(amount), **told
    )


def match(house, entry, shares=None):
    return match_entry(entry=entry, farm=house.farm, shares=shares or {}, at=NOON, by=house.office)


def test_it_becomes_a_payment_by_bank_of_its_day(house):
    bill = issued(house.farm, "60")
    entry = booking(house, party_name="A. Farmer", reference="RF73INV20260042")
    payment = match(house, entry, {bill.pk: Decimal(60)})
    assert (payment.amount, payment.received_on, payment.method) == (100, BOOKED_ON, "bank")
    assert (payment.payer_name, payment.reference, payment.bank_entry) == (
        "A. Farmer",
        "RF73INV20260042",
        entry,
    )
    with pytest.raises(EntryIsDone, match="already"):
        match(house, entry)
    assert list(BankEntry.objects.within(house.scope).to_match()) == []


def test_what_no_longer_fits_books_nothing(house):
    bill, entry = issued(house.farm, "60"), booking(house)
    note(house, "60", {bill.pk: Decimal(60)})
    with pytest.raises(CannotSettle):
        match(house, entry, {bill.pk: Decimal(60)})
    assert list(BankEntry.objects.within(house.scope).to_match()) == [entry]


def test_when_its_payment_is_taken_back_it_can_be_matched_again(house):
    entry = booking(house)
    take_back_payment(payment=match(house, entry), because="Wrong farm", at=NOON, by=house.office)
    assert list(BankEntry.objects.within(house.scope).to_match()) == [entry]
    assert match(house, entry).pk
    assert Payment.objects.within(house.scope).filter(bank_entry=entry).count() == 2


def test_what_was_set_aside_or_went_out_is_refused(house):
    entry = booking(house)
    set_aside_entry(entry=entry, because="Rent", at=NOON)
    with pytest.raises(EntryIsDone, match="set aside"):
        match(house, entry)
    with pytest.raises(EntryIsDone, match="went out"):
        match(house, booking(house, "-5"))


def test_money_that_went_out_pays_back(house):
    payment, credit = note(house, "50"), credited(issued(house.farm, "100"), "30")

    def back(entry, of):
        return match_entry_paid_back(entry=entry, of=of, at=NOON, by=house.office)

    assert back(booking(house, "-20"), payment).pays_back == payment
    assert back(booking(house, "-30"), credit).amount == -30
    with pytest.raises(EntryIsDone, match="came in"):
        back(booking(house, "20"), payment)
    with pytest.raises(EntryIsDone, match="another currency"):
        back(booking(house, "-20", currency="USD"), payment)
