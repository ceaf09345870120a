"""The mileage log as a table."""

from collections.abc import Sequence
from decimal import Decimal

from invoicing.documents.book_content import DriveRow
from invoicing.documents.book_table import CURRENCY, BookTable
from trimops.kernel.money import round_money
from visits.documents.data_table import DataTable


def mileage_table(rows: Sequence[DriveRow], unit: str, currency: str) -> BookTable:
    """One line a drive, with the part at the first rate, the part at the other, and the allowance."""
    far, first, then = f"Distance, {unit}", "At the first rate", "At the other rate"
    headings = (
        "Day",
        "Van",
        "From",
        "To",
        "Purpose",
        far,
        "Told by",
        "Before it was mended",
        "Why mended",
        first,
    )
    told = [
        (
            row.on,
            row.van,
            row.from_words,
            row.to_words,
            row.purpose,
            row.distance,
            row.source,
            row.reckoned,
            row.mended_because,
            _rounded(row.allowed.at_first),
            _rounded(row.allowed.at_then),
            currency,
            row.allowed.amount,
        )
        for row in rows
    ]
    table = DataTable("Mileage", "Drives for the business", (*headings, then, CURRENCY, "Allowance"), told)
    shown = ("Day", "From", "To", "Purpose", far, "Told by", CURRENCY, "Allowance")
    return BookTable(table, (far, "Allowance"), shown, "Allowance")


def _rounded(distance: Decimal) -> Decimal:
    return round_money(distance, 2)
