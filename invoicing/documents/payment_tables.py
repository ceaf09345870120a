"""Payments, write-offs and what is open, as tables."""

from collections.abc import Sequence

from invoicing.documents.book_content import OpenRow, PaidRow, WriteOffRow
from invoicing.documents.book_table import CURRENCY, BookTable
from invoicing.domain.ageing import Age, age_of
from visits.documents.data_table import Cell, DataTable

AGES = ("Not due yet", "1 to 30 days", "31 to 60 days", "61 to 90 days", "Over 90 days")
"""Days late: a heading for each `Age`."""


def payments_table(rows: Sequence[PaidRow]) -> BookTable:
    """One line a payment; money paid back is negative."""
    headings = (
        "Day",
        "Farm",
        "Paid by",
        "How",
        "Reference",
        CURRENCY,
        "Amount",
        "Set against",
        "Not set against any",
    )
    told = [
        (
            row.on,
            row.farm,
            row.payer,
            row.method.label,
            row.reference,
            row.currency,
            row.amount,
            "; ".join(f"{number} {amount}" for number, amount in row.settled),
            row.left,
        )
        for row in rows
    ]
    table = DataTable("Payments", "By the day they came", headings, told)
    shown = ("Day", "Farm", "How", "Set against", CURRENCY, "Amount", "Not set against any")
    return BookTable(table, ("Amount", "Not set against any"), shown, "Amount")


def write_offs_table(rows: Sequence[WriteOffRow]) -> BookTable:
    """One line for each amount written off, with its reason."""
    headings = ("Day", "Number", "Bill to", "Why", CURRENCY, "Amount")
    told = [(row.on, row.number, row.party, row.reason, row.currency, row.amount) for row in rows]
    return BookTable(DataTable("Written off", "By day", headings, told), ("Amount",), headings, "Amount")


def open_table(rows: Sequence[OpenRow]) -> BookTable:
    """One line a paper that was open, the amount in the column of its age."""
    headings = ("Number", "Issued", "Due", "Days late", "Bill to", "Farm", CURRENCY, "Total", "Open", *AGES)
    told = [
        (
            row.number,
            row.issued_on,
            row.due_on,
            row.days_late,
            row.party,
            row.farm,
            row.currency,
            row.total,
            row.still_open,
            *_by_age(row),
        )
        for row in rows
    ]
    table = DataTable("Open", "What was not paid at the end of the period", headings, told)
    shown = ("Number", "Due", "Bill to", CURRENCY, "Open", *AGES)
    return BookTable(table, ("Total", "Open", *AGES), shown, "Open")


def _by_age(row: OpenRow) -> tuple[Cell, ...]:
    its_age = age_of(row.days_late)
    return tuple(row.still_open if age is its_age else None for age in Age)
