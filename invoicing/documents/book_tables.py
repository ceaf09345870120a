"""The sales journal and the tax summary of a period as tables."""

from collections.abc import Sequence

from invoicing.documents.book_table import CURRENCY, BookTable
from invoicing.domain.amounts import TaxShare
from invoicing.domain.journal_rows import JournalRow, RateKey, RateSum, rates_in, share_of
from invoicing.domain.minor_units import minor_digits
from trimops.kernel.money import round_money
from trimops.paper.figures import rate
from visits.documents.data_table import Cell, DataTable

CATEGORIES = {"S": "", "Z": "zero rate", "E": "exempt", "AE": "reverse charge", "O": "outside of the tax"}
"""Words for the categories of UNCL 5305; the usual rate needs none besides its percentage."""


def rate_words(key: RateKey) -> str:
    """`("S", 20)` is "20 %", a category without tax says which it is: "0 % exempt"."""
    category, percent = key
    words = CATEGORIES.get(category, category)
    return f"{rate(percent)} {words}".rstrip()


def journal_table(rows: Sequence[JournalRow], tax_name: str) -> BookTable:
    """One line a paper, with net and tax for each rate that occurs in the period."""
    keys = rates_in(rows)
    per_rate = [
        heading
        for key in keys
        for heading in (f"Net at {rate_words(key)}", f"{tax_name} at {rate_words(key)}")
    ]
    totals = ("Net", tax_name, "Total")
    headings = ("Number", "Kind", "Corrects", "Issued", "Tax point", "Due", "Bill to", "Farm", CURRENCY)
    table = DataTable(
        "Sales journal",
        "Issued invoices and credit notes (negative)",
        (*headings, *per_rate, *totals),
        [_journal_row(row, keys) for row in rows],
    )
    return BookTable(
        table, (*per_rate, *totals), ("Number", "Issued", "Tax point", "Bill to", CURRENCY, *totals), "Total"
    )


def tax_table(sums: Sequence[RateSum], tax_name: str) -> BookTable:
    """One line a currency and rate."""
    amounts = ("Net of invoices", "Net of credit notes", "Net", tax_name, "Total")
    rows = [
        (
            rate_words((row.category, row.percent)),
            row.category,
            row.percent,
            row.currency,
            row.papers,
            *_rounded(row),
        )
        for row in sums
    ]
    headings = ("Rate", "Category", "Percent", CURRENCY, "Papers", *amounts)
    table = DataTable("Tax summary", "By rate", headings, rows)
    return BookTable(table, amounts, ("Rate", CURRENCY, "Papers", *amounts), "Total")


def _rounded(row: RateSum) -> tuple[Cell, ...]:
    """The amounts with the decimals of the currency, also where they are nought."""
    digits = minor_digits(row.currency)
    amounts = (row.net_invoiced, row.net_credited, row.net, row.tax, row.gross)
    return tuple(round_money(amount, digits) for amount in amounts)


def _journal_row(row: JournalRow, keys: Sequence[RateKey]) -> tuple[Cell, ...]:
    shares = (share_of(row, key) for key in keys)
    per_rate = [amount for share in shares for amount in _net_and_tax(share)]
    kind = "Credit note" if row.is_credit_note else "Invoice"
    days = row.issued_on, row.tax_point, row.due_on
    head = (row.number, kind, row.corrects, *days, row.party, row.farm, row.currency)
    return (*head, *per_rate, row.net, row.tax, row.gross)


def _net_and_tax(share: TaxShare | None) -> tuple[Cell, Cell]:
    return (share.taxable, share.tax) if share else (None, None)
