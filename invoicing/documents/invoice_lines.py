"""The lines of an invoice: right-aligned figures in tabular digits, units and currency in the head."""

from decimal import Decimal

from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Table

from invoicing.documents.invoice_content import InvoiceLine, InvoicePaper
from trimops.paper.colours import Tint
from trimops.paper.figures import decimals, plain_amount, quantity, rate
from trimops.paper.styles import SMALL, TEXT, style, words
from trimops.paper.tables import Cell, Column, ruled_table
from trimops.paper.typefaces import BODY, width_of

_UNIT_WORDS = {"C62": "", "KMT": "km", "HUR": "h"}
_CATEGORY_WORDS = {"E": "exempt", "AE": "reverse charge", "O": "none"}


def lines_table(paper: InvoicePaper) -> Table:
    """One row to a line, never split over a page."""
    deepest = max((decimals(line.unit_price) for line in paper.lines), default=0)
    columns = (
        Column("What", 75 * mm),
        Column("Quantity", 18 * mm, "right"),
        Column("Unit", 14 * mm),
        Column(f"Unit price\n{paper.currency}", 23 * mm, "right"),
        Column(f"{paper.tax_name} rate", 22 * mm, "right"),
        Column(f"Net\n{paper.currency}", 28 * mm, "right"),
    )
    return ruled_table(columns, [_row(line, paper.digits, deepest) for line in paper.lines])


def _on_the_point(amount: Decimal, digits: int, deepest: int) -> ParagraphStyle:
    """Right-aligned so that the decimal points of all rows stand under each other."""
    lacking = max(deepest, digits) - max(decimals(amount), digits)
    return style(align="right", right=lacking * width_of("0", BODY, TEXT))


def rate_words(category: str, percent_words: str) -> str:
    """ "20 %", or the words for a category that has no rate"""
    return _CATEGORY_WORDS.get(category, percent_words)


def _row(line: InvoiceLine, digits: int, deepest: int) -> list[Cell]:
    what: list[Flowable] = [words(line.description)]
    if line.why:
        what.append(words(line.why, style(SMALL, tint=Tint.QUIET)))
    right = style(align="right")
    return [
        what,
        words(quantity(line.quantity), right),
        words(_UNIT_WORDS.get(line.unit, line.unit)),
        words(plain_amount(line.unit_price, digits), _on_the_point(line.unit_price, digits, deepest)),
        words(rate_words(line.tax_category, rate(line.tax_percent)), right),
        words(plain_amount(line.net, digits), right),
    ]
