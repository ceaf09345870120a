"""The lines of a statement of account, each with the balance after it, and what is open by its age."""

from collections.abc import Sequence
from decimal import Decimal

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Table

from invoicing.documents.invoice_columns import amount_room
from invoicing.documents.statement_content import Ageing, StatementContent, StatementLine
from invoicing.domain.ageing import Age
from trimops.paper.carried_rows import CarriedRow, CarriedRows
from trimops.paper.colours import Tint
from trimops.paper.days import day_short_year
from trimops.paper.figures import plain_amount
from trimops.paper.headings import heading
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import style, words
from trimops.paper.tables import Column, Command, ruled_table

_QUIET = style(tint=Tint.QUIET)
_DAY = 25 * mm
_AMOUNT = 24 * mm
_NUMBER = 34 * mm


def account_table(content: StatementContent) -> CarriedRows:
    """From the opening balance to the closing one; at the end of a page the balance is carried over."""
    columns = _columns(content)

    def draw(rows: Sequence[CarriedRow]) -> Table:
        more: list[Command] = [("ALIGN", (4, 1), (-1, -1), "RIGHT")]
        wide = [number for number, row in enumerate(rows, start=1) if row.cells[2:4] == ("", "")]
        more += [("SPAN", (1, number), (3, number)) for number in wide]
        return ruled_table(columns, [list(row.cells) for row in rows], more=more)

    def told(what: str, balance: str) -> CarriedRow:
        return CarriedRow(("", words(what, _QUIET), "", "", "", "", balance))

    rows = [_row(line, content.digits) for line in content.lines]
    return CarriedRows([_opening(content), *rows, _closing(content)], draw, told)


def ageing_part(content: StatementContent) -> list[Flowable]:
    """How long what is open has been due; nothing where it was not asked for."""
    if content.ageing is None:
        return []
    told = _buckets(content.ageing)
    columns = [Column(f"{what}\n{content.currency}", TEXT_WIDTH / len(told), "right") for what, _ in told]
    right: Command = ("ALIGN", (0, 1), (-1, -1), "RIGHT")
    amounts = [plain_amount(amount, content.digits) for _, amount in told]
    day = day_short_year(content.last)
    return [
        CondPageBreak(80),
        heading(f"How long it has been due, on {day}"),
        ruled_table(columns, [amounts], more=[right]),
    ]


def _buckets(ageing: Ageing) -> list[tuple[str, Decimal]]:
    told: list[tuple[str, Decimal]] = [(age.label, getattr(ageing, age)) for age in Age]
    return [*told, ("Paid, not yet used", -ageing.unused)] if ageing.unused else told


def _columns(content: StatementContent) -> list[Column]:
    amounts = [
        content.opening,
        content.closing,
        *(amount for line in content.lines for amount in (line.debit, line.credit, line.balance)),
    ]
    width = amount_room((plain_amount(amount, content.digits) for amount in amounts), _AMOUNT)
    currency = content.currency
    rest = [
        Column("Number", _NUMBER),
        Column("Due", _DAY),
        Column(f"Billed\n{currency}", width, "right"),
        Column(f"Paid, credited\n{currency}", width, "right"),
        Column(f"Balance\n{currency}", width, "right"),
    ]
    what = TEXT_WIDTH - _DAY - sum(column.width for column in rest)
    return [Column("Day", _DAY), Column("What", what), *rest]


def _row(line: StatementLine, digits: int) -> CarriedRow:
    balance = plain_amount(line.balance, digits)
    return CarriedRow(
        (
            day_short_year(line.day),
            words(line.what),
            words(line.number) if line.number else "",
            day_short_year(line.due_on) if line.due_on else "",
            plain_amount(line.debit, digits) if line.debit else "",
            plain_amount(line.credit, digits) if line.credit else "",
            balance,
        ),
        balance,
    )


def _opening(content: StatementContent) -> CarriedRow:
    balance = plain_amount(content.opening, content.digits)
    told = words("Balance before", _QUIET)
    return CarriedRow((day_short_year(content.first), told, "", "", "", "", balance), balance)


def _closing(content: StatementContent) -> CarriedRow:
    bold = style(bold=True)
    balance = plain_amount(content.closing, content.digits)
    cells = (
        words(day_short_year(content.last), bold),
        words("Balance", bold),
        *("", "", "", ""),
        words(balance, style(bold=True, align="right")),
    )
    return CarriedRow(cells, balance)
