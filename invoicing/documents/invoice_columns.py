"""The columns of the lines of an invoice: as many and as wide as its lines need."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from math import ceil

from reportlab.lib.units import mm

from invoicing.documents.invoice_content import InvoicePaper
from trimops.paper.figures import decimals, plain_amount, quantity
from trimops.paper.fitting import room_for
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import TEXT
from trimops.paper.tables import Column

BESIDE = 8.0
"""Room at the right of a cell, in points."""
_UNIT_WORDS = {"C62": "", "KMT": "km", "SMI": "mi", "HUR": "h", "DAY": "days"}
# More lines than this are set closer, so that sixty fit two pages.
_MANY = 24
# More text under the lines than this, in lines of about fifty signs, and each is cut to one of them.
_MUCH, PER_LINE = 30, 54


@dataclass(frozen=True)
class LineColumns:
    """Which columns there are; `deepest` is the most decimals of a unit price; `is_close`: many lines, little air.

    `is_brief`: so much stands under the lines that each says it in one line.
    """

    columns: tuple[Column, ...]
    digits: int
    deepest: int
    has_units: bool
    has_discounts: bool
    is_close: bool
    is_brief: bool = False


def line_columns(paper: InvoicePaper) -> LineColumns:
    """A column for units or discounts only where a line has one; what is left over is for the words."""
    has_units = any(unit_words(line.unit) for line in paper.lines)
    has_discounts = any(line.allowance for line in paper.lines)
    deepest = max([paper.digits, *(decimals(line.unit_price) for line in paper.lines)])
    # As wide as with the most decimals: the points of all prices stand under each other.
    prices = (plain_amount(line.unit_price, deepest) for line in paper.lines)
    rest = [
        _figures("Quantity", 18, (quantity(line.quantity) for line in paper.lines)),
        *([Column("Unit", 13 * mm)] if has_units else []),
        _figures(f"Unit price\n{paper.currency}", 23, prices),
        *(
            [_amounts("Discount", 21, paper, (-line.allowance for line in paper.lines))]
            if has_discounts
            else []
        ),
        Column(f"{paper.tax_name} rate", _rate_width(paper), "right"),
        _amounts("Net", 26, paper, (paper.sum_of_lines, *(line.net for line in paper.lines))),
    ]
    what = Column("What", TEXT_WIDTH - sum(column.width for column in rest))
    return LineColumns(
        (what, *rest),
        paper.digits,
        deepest,
        has_units,
        has_discounts,
        is_close=len(paper.lines) > _MANY,
        is_brief=sum(ceil(len(line.why) / PER_LINE) for line in paper.lines) > _MUCH,
    )


def unit_words(unit: str) -> str:
    """ "km" for KMT (UN/ECE Recommendation 20); nothing for single pieces; other words as they are"""
    return _UNIT_WORDS.get(unit, unit)


def amount_room(amounts: Iterable[str], least: float) -> float:
    """The width of a column of such amounts, at the least `least` points."""
    return room_for(amounts, least, TEXT, around=BESIDE + 2)


def _amounts(head: str, least: float, paper: InvoicePaper, amounts: Iterable[Decimal]) -> Column:
    return _figures(f"{head}\n{paper.currency}", least, (plain_amount(one, paper.digits) for one in amounts))


def _figures(head: str, least: float, told: Iterable[str]) -> Column:
    return Column(head, amount_room(told, least * mm), "right")


def _rate_width(paper: InvoicePaper) -> float:
    return (28 if any(line.tax_category == "AE" for line in paper.lines) else 21) * mm
