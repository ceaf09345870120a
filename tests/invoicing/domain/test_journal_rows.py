from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.domain.amounts import TaxShare
from invoicing.domain.journal_rows import (
    CurrencySum,
    JournalRow,
    currency_sums,
    rate_sums,
    rates_in,
    share_of,
    signed_shares,
)

DAY = date(2026, 3, 2)
USUAL = TaxShare("S", D(20), D(100), D(20))
LOW = TaxShare("S", D(5), D(40), D(2))
FREE = TaxShare("E", D(0), D(10), D(0))


def row(*shares, sign=1, currency="GBP", number="INV-1"):
    signed = signed_shares(shares, sign)
    net, tax = sum(s.taxable for s in signed), sum(s.tax for s in signed)
    return JournalRow(
        1,
        number,
        sign < 0,
        "",
        DAY,
        DAY,
        None,
        "Low Croft",
        "Low Croft",
        currency,
        signed,
        net,
        tax,
        net + tax,
    )


ROWS = [row(USUAL, LOW), row(FREE), row(USUAL, sign=-1), row(USUAL, currency="EUR")]


def test_a_credit_note_counts_the_other_way():
    assert row(USUAL, sign=-1).gross == -120


def test_the_usual_category_and_the_highest_rate_come_first():
    assert rates_in(ROWS) == [("S", D(20)), ("S", D(5)), ("E", D(0))]


@pytest.mark.parametrize(("key", "expected"), [(("S", D(5)), LOW), (("Z", D(0)), None)])
def test_the_share_at_one_rate_is_found(key, expected):
    assert share_of(ROWS[0], key) == expected


def test_sums_by_rate_tell_invoices_from_credit_notes():
    by_rate = {(s.currency, s.category, s.percent): s for s in rate_sums(ROWS)}
    usual = by_rate["GBP", "S", D(20)]
    assert (usual.papers, usual.net_invoiced, usual.net_credited, usual.net) == (2, 100, -100, 0)
    assert (usual.tax, usual.gross) == (0, 0)
    assert by_rate["EUR", "S", D(20)].gross == 120
    assert list(by_rate) == [("EUR", "S", 20), ("GBP", "S", 20), ("GBP", "S", 5), ("GBP", "E", 0)]


def test_sums_by_currency_are_those_of_the_rates():
    euro, pound = currency_sums(ROWS)
    assert euro == CurrencySum("EUR", 1, D(100), D(20), D(120))
    assert (pound.papers, pound.net, pound.tax, pound.gross) == (3, 50, 2, 52)
    assert pound.gross == sum(s.gross for s in rate_sums(ROWS) if s.currency == "GBP")


def test_a_period_without_papers_comes_to_nothing():
    assert (rate_sums([]), currency_sums([]), rates_in([])) == ([], [], [])
