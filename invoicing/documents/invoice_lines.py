"""The lines of an invoice: right-aligned figures in tabular digits, units and currency in the head."""

from collections.abc import Iterator, Sequence
from datetime import date
from decimal import Decimal
from itertools import groupby
from operator import attrgetter

from reportlab.platypus import Flowable, Table

from invoicing.documents.invoice_columns import BESIDE, PER_LINE, LineColumns, line_columns, unit_words
from invoicing.documents.invoice_content import InvoiceLine, InvoicePaper
from trimops.paper.carried_rows import CarriedRow, CarriedRows
from trimops.paper.colours import Tint
from trimops.paper.days import day_long
from trimops.paper.figures import plain_amount, quantity, rate
from trimops.paper.styles import SMALL, TEXT, style, words
from trimops.paper.tables import Cell, Command, ruled_table
from trimops.paper.typefaces import BODY, width_of

_CATEGORY_WORDS = {"E": "exempt", "AE": "reverse charge", "O": "none"}


def lines_table(paper: InvoicePaper) -> CarriedRows:
    """One row to a line, never split over a page; by day of work where there are several; sums carried over pages."""
    frame = line_columns(paper)

    def draw(rows: Sequence[CarriedRow]) -> Table:
        return _table(frame, rows)

    def told(what: str, amount: str) -> CarriedRow:
        return CarriedRow(_in_columns(frame, words(what, style(tint=Tint.QUIET)), last=amount))

    return CarriedRows(list(_rows(paper, frame)), draw, told)


def rate_words(category: str, percent_words: str) -> str:
    """ "20 %", or the words for a category that has no rate"""
    return _CATEGORY_WORDS.get(category, percent_words)


def _rows(paper: InvoicePaper, frame: LineColumns) -> Iterator[CarriedRow]:
    by_day = len({line.done_on for line in paper.lines if line.done_on}) > 1
    reached = Decimal(0)
    for day, lines in groupby(paper.lines, key=attrgetter("done_on")):
        of_day = list(lines)
        if by_day:
            yield _day_row(day, sum((line.net for line in of_day), Decimal(0)), paper.digits)
        for line in of_day:
            reached += line.net
            yield CarriedRow(_line(line, frame), plain_amount(reached, paper.digits))


def _day_row(day: date | None, net: Decimal, digits: int) -> CarriedRow:
    """The day with what its lines come to; "Besides" for lines that are of no one day."""
    told = f"{day_long(day) if day else 'Besides'}: {plain_amount(net, digits)}"
    return CarriedRow((words(told, style(bold=True)),), leads=True)


def _line(line: InvoiceLine, frame: LineColumns) -> tuple[Cell, ...]:
    return _in_columns(
        frame,
        _what(line, frame),
        quantity(line.quantity),
        unit_words(line.unit),
        plain_amount(line.unit_price, frame.digits),
        plain_amount(-line.allowance, frame.digits) if line.allowance else "",
        _rate_cell(line.tax_category, line.tax_percent),
        plain_amount(line.net, frame.digits),
    )


def _what(line: InvoiceLine, frame: LineColumns) -> list[Flowable]:
    why = _brief(line.why) if frame.is_brief else line.why
    more = [text for text in (_discount_words(line), why) if text]
    if frame.is_close:
        return [words(f"{line.description} ({'; '.join(more)})" if more else line.description)]
    small = style(SMALL, tint=Tint.QUIET)
    return [words(line.description), *(words(text, small) for text in more)]


def _brief(why: str) -> str:
    """The reason in one line, cut between two words: the visit's report tells all of it."""
    return why if len(why) <= PER_LINE else f"{why[: PER_LINE - 2].rsplit(' ', 1)[0].rstrip(',;:')} …"


def _discount_words(line: InvoiceLine) -> str:
    if not line.allowance:
        return ""
    percent = f" {rate(line.allowance_percent)}" if line.allowance_percent is not None else ""
    return f"Discount{percent}{f': {line.allowance_reason}' if line.allowance_reason else ''}"


def _rate_cell(category: str, percent: Decimal) -> Cell:
    told = rate_words(category, rate(percent))
    return words(told, style(align="right")) if category in _CATEGORY_WORDS else told


def _in_columns(
    frame: LineColumns,
    what: Cell,
    count: str = "",
    unit: str = "",
    price: str = "",
    discount: str = "",
    tax: Cell = "",
    last: str = "",
) -> tuple[Cell, ...]:
    units: list[Cell] = [words(unit) if unit else ""] if frame.has_units else []
    discounts = [discount] if frame.has_discounts else []
    return (what, count, *units, price, *discounts, tax, last)


def _table(frame: LineColumns, rows: Sequence[CarriedRow]) -> Table:
    width = len(frame.columns)
    more: list[Command] = [("ALIGN", (1, 1), (-1, -1), "RIGHT")]
    if frame.is_close:
        more += [("TOPPADDING", (0, 1), (-1, -1), 1), ("BOTTOMPADDING", (0, 1), (-1, -1), 1.8)]
    for number, row in enumerate(rows, start=1):
        if row.leads:
            more.append(("SPAN", (0, number), (-1, number)))
        else:
            more += _on_the_point(frame, number, row)
    groups = _with_what_follows(rows)
    cells = [[*row.cells, *([""] * (width - len(row.cells)))] for row in rows]
    return ruled_table(frame.columns, cells, groups=groups, more=more)


def _on_the_point(frame: LineColumns, number: int, row: CarriedRow) -> list[Command]:
    """Room at the right of a unit price, so that the decimal points of all rows stand under each other."""
    place = 3 if frame.has_units else 2
    price = row.cells[place]
    lacking = frame.deepest - len(price.partition(".")[2]) if isinstance(price, str) and price else 0
    if lacking <= 0:
        return []
    dot = width_of(".", BODY, TEXT) if isinstance(price, str) and "." not in price else 0
    room = BESIDE + lacking * width_of("0", BODY, TEXT) + dot
    return [("RIGHTPADDING", (place, number), (place, number), room)]


def _with_what_follows(rows: Sequence[CarriedRow]) -> list[tuple[int, int]]:
    groups: list[tuple[int, int]] = []
    first = 0
    for number, row in enumerate(rows):
        if not row.leads:
            groups.append((first, number))
            first = number + 1
    return groups
