"""Bookings come in once, whatever files they stand in."""

import pytest

from invoicing.models import BankEntry, BankStatement, MoneyRules
from invoicing.services.keep_bank_file import BankFileRefused
from invoicing.services.read_bank_file import read_bank_file
from tests.factories import NOON, make_house
from tests.invoicing.domain.test_bank_csv import COMMA, FOR_COMMA
from tests.invoicing.domain.test_camt053 import NEW, OLD
from tests.invoicing.services.test_keep_bank_file import keep


def read(house, content, **more):
    return read_bank_file(file=keep(house, content), at=NOON, by=house.office, **more)


def test_statements_that_overlap_bring_each_booking_once_in_either_order(house):
    other = make_house("Fell & Beck")
    first, second = read(house, OLD), read(house, NEW)
    assert (first.new, first.known, second.new, second.known) == (9, 0, 2, 4)
    second, first = read(other, NEW), read(other, OLD)
    assert (second.new, second.known, first.new, first.known) == (6, 0, 5, 4)
    for one in (house, other):
        assert BankEntry.objects.within(one.scope).count() == 11
    assert [row.known_before for row in BankStatement.objects.within(house.scope).order_by("pk")] == [0, 0, 4]


def test_a_file_is_read_once(house):
    file = keep(house, OLD)
    read_bank_file(file=file, at=NOON, by=house.office)
    with pytest.raises(BankFileRefused, match="read already"):
        read_bank_file(file=file, at=NOON, by=house.office)


def test_a_csv_wants_its_columns_and_is_read_whole_or_not_at_all(house):
    file = keep(house, COMMA, "statement.csv")
    with pytest.raises(BankFileRefused, match="which column"):
        read_bank_file(file=file, at=NOON, by=house.office)
    with pytest.raises(BankFileRefused, match="Line"):
        read_bank_file(
            file=keep(house, COMMA + b"x;y\n\n", "statement.csv"), at=NOON, by=house.office, mapping=FOR_COMMA
        )
    assert not BankStatement.objects.within(house.scope).exists()
    reading = read_bank_file(file=file, at=NOON, by=house.office, mapping=FOR_COMMA, currency="EUR")
    assert (reading.new, reading.known) == (3, 0)


def test_another_account_than_the_invoices_name_is_told(house):
    MoneyRules.objects.create(business=house.business, iban="GB82WEST12345698765432")
    assert any("your invoices name" in words for words in read(house, OLD).warnings)


def test_what_the_statement_says_is_kept(house):
    read(house, OLD)
    monday = BankStatement.objects.within(house.scope).get(name="2026-061")
    assert (monday.opening, monday.closing, monday.form) == (1000, 1558, "camt053")
    row = BankEntry.objects.within(house.scope).get(amount="97.50")
    assert (row.charges, row.party_name, row.currency) == (2.5, "Ferme du Tilleul", "EUR")
    assert BankEntry.objects.within(house.scope).get(is_reversal=True).amount == -75
