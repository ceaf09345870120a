"""Tax by rate, discounts and charges on the whole, totals, reasons where no tax is charged, notes."""

from collections.abc import Iterator, Sequence
from decimal import Decimal

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Spacer, Table

from invoicing.documents.invoice_columns import amount_room
from invoicing.documents.invoice_content import HomeTax, InvoicePaper, TaxRow, WholeLine
from invoicing.documents.invoice_lines import rate_words
from invoicing.documents.sums_table import LARGE, Sum, sums_table
from invoicing.domain.minor_units import minor_digits
from trimops.paper.colours import Tint
from trimops.paper.figures import money, plain_amount, rate
from trimops.paper.fitting import room_for
from trimops.paper.headings import heading
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import style, words
from trimops.paper.tables import Cell, Column, Command, bare_table, ruled_table

_LEFT = 95 * mm
_AMOUNTS = 30 * mm
_ROOM = 120
_ROW = 18
REVERSE_CHARGE = "Reverse charge"
CREDITED = "Nothing is to be paid on this paper: the amount is set against what is owed, or paid back."


def totals_part(paper: InvoicePaper) -> list[Flowable]:
    """Tax by rate on the left, totals on the right, reasons where no tax is charged below."""
    totals = list(_totals(paper))
    tall = _ROOM + _ROW * (len(totals) - 3)
    both = bare_table([[_tax_table(paper), _totals_table(totals, paper)]], [_LEFT, TEXT_WIDTH - _LEFT])
    reasons = [words(reason, style(before=3)) for row in paper.tax_rows if (reason := _reason(row))]
    return [Spacer(0, 10), CondPageBreak(tall), both, *reasons]


def notes_part(paper: InvoicePaper) -> list[Flowable]:
    """What becomes of a credit, the discount for prompt payment, and notes."""
    parts: list[Flowable] = []
    if paper.number is None and not paper.corrects:
        parts.append(words("How to pay stands here once it is issued.", style(tint=Tint.QUIET, before=10)))
    elif paper.corrects:
        parts.append(words(CREDITED, style(before=10)))
    if paper.cash_discount:
        parts.append(words(paper.cash_discount, style(before=6)))
    if paper.notes:
        parts += [heading("Notes"), *[words(note, style(after=2)) for note in paper.notes]]
    return parts


def _reason(row: TaxRow) -> str:
    """The reason; the words that Directive 2006/112/EC, art. 226 (11a) asks for are never lacking."""
    if row.category != "AE" or REVERSE_CHARGE.lower() in row.exempt_reason.lower():
        return row.exempt_reason
    return f"{REVERSE_CHARGE}: {row.exempt_reason}" if row.exempt_reason else REVERSE_CHARGE


def _tax_table(paper: InvoicePaper) -> Table:
    nets = (plain_amount(row.taxable, paper.digits) for row in paper.tax_rows)
    taxes = (plain_amount(row.tax, paper.digits) for row in paper.tax_rows)
    columns = (
        Column(f"{paper.tax_name} rate", 28 * mm),
        Column(f"Net {paper.currency}", amount_room(nets, 28 * mm), "right"),
        Column(f"{paper.tax_name} {paper.currency}", amount_room(taxes, 26 * mm), "right"),
    )
    rows = [_tax_row(row, paper.digits) for row in sorted(paper.tax_rows, key=_highest_rate_first)]
    align: Command = ("ALIGN", (1, 1), (-1, -1), "RIGHT")
    return ruled_table(columns, rows, more=[align])


def _highest_rate_first(row: TaxRow) -> tuple[Decimal, str]:
    return -row.percent, row.category


def _tax_row(row: TaxRow, digits: int) -> list[Cell]:
    return [
        rate_words(row.category, rate(row.percent)),
        plain_amount(row.taxable, digits),
        plain_amount(row.tax, digits),
    ]


def _totals(paper: InvoicePaper) -> Iterator[tuple[str, Decimal]]:
    """All lines above what is to be paid; what is nought and says nothing is left out."""
    if paper.whole:
        yield "All lines", paper.sum_of_lines
        for part in paper.whole:
            yield _whole_words(part, paper), part.amount if part.is_charge else -part.amount
    yield f"Total without {paper.tax_name}", paper.net
    yield f"Total {paper.tax_name}", paper.tax
    yield f"Total with {paper.tax_name}", paper.gross
    if paper.paid:
        yield "Paid already", -paper.paid
    if paper.rounding:
        yield "Rounding", paper.rounding


def _whole_words(part: WholeLine, paper: InvoicePaper) -> str:
    """ "Discount 5 % of 400.00: paid on the day (20 %)"; the tax rate only where there are several."""
    percent = f" {rate(part.percent)}" if part.percent is not None else ""
    base = f" of {plain_amount(part.base, paper.digits)}" if percent and part.base is not None else ""
    taxed = f" ({rate_words(part.tax_category, rate(part.tax_percent))})" if len(paper.tax_rows) > 1 else ""
    return f"{'Charge' if part.is_charge else 'Discount'}{percent}{base}: {part.reason}{taxed}"


def _totals_table(totals: Sequence[tuple[str, Decimal]], paper: InvoicePaper) -> Table:
    told = [(what, _money(amount, paper)) for what, amount in totals]
    last = "To credit" if paper.corrects else "To pay", _money(paper.due, paper)
    below = [_home_tax(paper.home_tax, paper.tax_name)] if paper.home_tax is not None else []
    widest = [_money(amount, paper) for amount in (paper.net, paper.gross, paper.due)]
    # The faces' bold is somewhat wider.
    amounts = room_for(widest, _AMOUNTS, LARGE, around=12)
    return sums_table(told, last, [TEXT_WIDTH - _LEFT - amounts, amounts], below)


def _home_tax(home: HomeTax, tax_name: str) -> Sum:
    """ "VAT in sterling", "£11.40"; other money by its code."""
    told = "sterling" if home.currency == "GBP" else home.currency
    return f"{tax_name} in {told}", money(home.amount, home.currency, minor_digits(home.currency))


def _money(amount: Decimal, paper: InvoicePaper) -> str:
    return money(amount, paper.currency, paper.digits)
