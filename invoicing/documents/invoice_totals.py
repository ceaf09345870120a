"""Tax by rate, totals, how to pay, notes."""

from decimal import Decimal

from reportlab.lib.colors import HexColor
from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Spacer, Table

from invoicing.documents.invoice_content import InvoicePaper, TaxRow
from invoicing.documents.invoice_lines import rate_words
from trimops.paper.colours import HEX, Tint
from trimops.paper.figures import money, plain_amount, rate
from trimops.paper.headings import heading, section
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import LEAD, TEXT, style, words
from trimops.paper.tables import Cell, Column, bare_table, ruled_table

_INK = HexColor(HEX[Tint.INK])
_LEFT = 95 * mm
_LABEL = 45 * mm


def totals_part(paper: InvoicePaper) -> list[Flowable]:
    """Tax by rate on the left, totals on the right, reasons where no tax is charged below."""
    both = bare_table([[_tax_table(paper), _totals_table(paper)]], [_LEFT, TEXT_WIDTH - _LEFT])
    reasons = [words(row.exempt_reason, style(before=3)) for row in paper.tax_rows if row.exempt_reason]
    return [Spacer(0, 10), CondPageBreak(120), both, *reasons]


def payment_part(paper: InvoicePaper) -> list[Flowable]:
    """How to pay (not on a credit note), discount for prompt payment, and notes."""
    parts = [] if paper.corrects else _how_to_pay(paper)
    if paper.cash_discount:
        parts.append(words(paper.cash_discount, style(before=4)))
    if paper.notes:
        parts += [heading("Notes"), *[words(note, style(after=2)) for note in paper.notes]]
    return parts


def _how_to_pay(paper: InvoicePaper) -> list[Flowable]:
    payment = paper.payment
    facts = [*payment.details, *([("Reference", payment.reference)] if payment.reference else [])]
    parts: list[Flowable] = []
    if facts:
        rows = [
            [words(what, style(tint=Tint.QUIET)), words(value, style(bold=True))] for what, value in facts
        ]
        parts.append(bare_table(rows, [38 * mm, TEXT_WIDTH - 38 * mm], pad=2))
    if payment.terms:
        parts.append(words(payment.terms, style(before=4)))
    return [*section("How to pay", 90), *parts] if parts else []


def _tax_table(paper: InvoicePaper) -> Table:
    columns = (
        Column(f"{paper.tax_name} rate", 28 * mm),
        Column(f"Net {paper.currency}", 28 * mm, "right"),
        Column(f"{paper.tax_name} {paper.currency}", 26 * mm, "right"),
    )
    return ruled_table(columns, [_tax_row(row, paper.digits) for row in paper.tax_rows])


def _tax_row(row: TaxRow, digits: int) -> list[Cell]:
    right = style(align="right")
    return [
        words(rate_words(row.category, rate(row.percent))),
        words(plain_amount(row.taxable, digits), right),
        words(plain_amount(row.tax, digits), right),
    ]


def _totals_table(paper: InvoicePaper) -> Table:
    lines = [(f"Total without {paper.tax_name}", paper.net), (f"Total {paper.tax_name}", paper.tax)]
    lines.append((f"Total with {paper.tax_name}", paper.gross))
    if paper.paid:
        lines.append(("Paid already", -paper.paid))
    rows = [_total_row(label, _money(amount, paper)) for label, amount in lines]
    rows.append(_total_row("To credit" if paper.corrects else "To pay", _money(paper.due, paper), LEAD + 1))
    if paper.tax_in_sterling is not None:
        rows.append(_total_row(f"{paper.tax_name} in sterling", money(paper.tax_in_sterling, "GBP")))
    table = bare_table(rows, [_LABEL, TEXT_WIDTH - _LEFT - _LABEL], pad=2)
    table.setStyle([("LINEABOVE", (0, len(lines)), (-1, len(lines)), 1.0, _INK)])
    return table


def _money(amount: Decimal, paper: InvoicePaper) -> str:
    return money(amount, paper.currency, paper.digits)


def _total_row(label: str, amount: str, size: float = TEXT) -> list[Flowable]:
    is_last = size > LEAD
    return [words(label, style(size, bold=is_last)), words(amount, style(size, bold=is_last, align="right"))]
