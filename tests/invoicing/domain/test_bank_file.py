from datetime import date
from decimal import Decimal

import pytest

from invoicing.domain.bank_file import (
    MOST_BOOKINGS,
    MOST_BYTES,
    BankLine,
    ReadStatement,
    UnreadableBankFile,
    balance_warning,
    is_day_of_bank,
    is_sum_of_bank,
    refuse_many,
    refuse_size,
)


def line(amount, day=date(2026, 3, 2)):
    return BankLine(day, Decimal(amount), "EUR")


def test_the_closing_balance_is_reckoned_after():
    lines = (line("10.50"), line("-3"))
    assert balance_warning(Decimal(100), Decimal("107.50"), lines) == ""
    assert "107.50" in balance_warning(Decimal(100), Decimal(107), lines)
    assert balance_warning(None, Decimal(107), lines) == ""


def test_a_statement_knows_its_days():
    statement = ReadStatement("", "", "EUR", (line(1, date(2026, 3, 4)), line(2, date(2026, 3, 1))))
    assert (statement.first_day, statement.last_day) == (date(2026, 3, 1), date(2026, 3, 4))
    assert ReadStatement("", "", "EUR", ()).first_day is None


@pytest.mark.parametrize("content", [b"", b" \n", b"x" * (MOST_BYTES + 1)])
def test_empty_and_too_large(content):
    with pytest.raises(UnreadableBankFile):
        refuse_size(content)


@pytest.mark.parametrize("amount", ["0", "-9999999999.9999", "1.0000", "1E+3"])
def test_a_sum_that_a_bank_books(amount):
    assert is_sum_of_bank(Decimal(amount))


@pytest.mark.parametrize(
    "amount", ["NaN", "sNaN", "-Infinity", "1E+99", "1E+99999999", "1e10", "1E-99", "0.12345"]
)
def test_a_sum_that_no_column_holds(amount):
    assert not is_sum_of_bank(Decimal(amount))


def test_days_far_from_our_time_are_slips():
    days = (date(1, 1, 1), date(1969, 12, 31), date(2026, 3, 2), date(9999, 12, 31))
    assert [is_day_of_bank(day) for day in days] == [False, False, True, False]


def test_more_bookings_than_are_read_at_once():
    refuse_many(MOST_BOOKINGS)
    with pytest.raises(UnreadableBankFile, match="shorter periods"):
        refuse_many(MOST_BOOKINGS + 1)
