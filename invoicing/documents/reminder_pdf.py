"""A reminder of an overdue invoice as PDF: what is open, how interest was reckoned, how to pay, whom to ring."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer

from invoicing.documents.paper_head import Fact, from_and_to, paper_head, to_and_facts
from invoicing.documents.payment_slip import payment_slip
from invoicing.documents.reminder_content import InterestClaim, ReminderContent
from invoicing.documents.reminder_words import ask_words, reminder_mark, reminder_title, reminder_words
from invoicing.documents.sums_table import sums_table
from trimops.kernel.money import round_money
from trimops.paper.days import day_plain, day_short_year
from trimops.paper.figures import money, plain_amount, rate
from trimops.paper.footing import footing
from trimops.paper.headings import section
from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.styles import SMALL, style, words
from trimops.paper.tables import Cell, Column, Command, ruled_table

_TOLD = 95 * mm
_AMOUNT = 40 * mm
# Interest of a span is shown this much finer than money, since it is rounded only once, at the end.
_FINER = 2


def reminder_pdf(content: ReminderContent) -> bytes:
    """The PDF. The same content gives the same bytes.

    Raises LogoUnreadable when the logo is no picture; ValueError if `made_at` has no time zone, the step is below 1,
    or the figures do not add up.
    """
    _refuse_wrong_sums(content)
    story = [*_head(content), _figures(content), *_reckoning(content), *_end(content)]
    mark = reminder_mark(content.step)
    info = SheetInfo(
        title=reminder_title(content),
        author=content.business.name,
        subject=f"{mark} of invoice {content.number} to {content.party.name}",
        made_at=content.made_at,
        footer=footing((content.business.name,), f"{mark}, invoice {content.number}"),
    )
    return build_sheet(story, info)


def _refuse_wrong_sums(content: ReminderContent) -> None:
    if content.gross - content.settled != content.open_amount:
        raise ValueError("what is open is not the invoice less what was settled")
    interest = content.interest.total if content.interest else Decimal(0)
    if content.open_amount + interest + content.fixed_sum != content.total:
        raise ValueError("the total is not what is open with interest and fixed sum")


def _head(content: ReminderContent) -> list[Flowable]:
    facts: list[Fact] = [
        ("Invoice number", content.number),
        ("Date of invoice", day_plain(content.issued_on)),
        ("Date of this letter", day_plain(content.day)),
        ("Due", day_plain(content.due_on)),
    ]
    if content.farm_name and content.farm_name != content.party.name:
        facts.append(("Farm", content.farm_name))
    mark, title = reminder_mark(content.step), reminder_title(content)
    business, party = from_and_to(content.business, content.party)
    return [
        *paper_head(business, content.tax_name, mark, title, content.logo),
        *to_and_facts(party, content.tax_name, facts),
        *(words(text, style(after=6)) for text in reminder_words(content)),
        Spacer(0, 4),
    ]


def _figures(content: ReminderContent) -> Flowable:
    told = [(what, money(amount, content.currency, content.digits)) for what, amount in _amounts(content)]
    last = "To pay", money(content.total, content.currency, content.digits)
    return sums_table(told, last, [_TOLD, _AMOUNT])


def _amounts(content: ReminderContent) -> Iterator[tuple[str, Decimal]]:
    yield f"Invoice {content.number} of {day_short_year(content.issued_on)}", content.gross
    if content.settled:
        yield "Paid or credited", -content.settled
        yield "Still open", content.open_amount
    if content.interest:
        yield f"Interest up to {day_short_year(content.day)}", content.interest.total
    if content.fixed_sum:
        yield "Fixed sum for late payment", content.fixed_sum


def _reckoning(content: ReminderContent) -> list[Flowable]:
    """How interest and fixed sum came about, with the words on where they are laid down."""
    parts: list[Flowable] = []
    if content.interest:
        said = (content.interest.formula, content.interest.source)
        parts += [*section("How the interest is reckoned"), _spans(content.interest, content)]
        parts += [words(text, style(before=4)) for text in said if text]
    if content.fixed_sum and content.fixed_sum_source:
        parts.append(words(f"Fixed sum: {content.fixed_sum_source}", style(before=4)))
    return parts


def _spans(interest: InterestClaim, content: ReminderContent) -> Flowable:
    digits = content.digits
    columns = [
        Column("From", 30 * mm),
        Column("To", 30 * mm),
        Column("Days", 20 * mm, "right"),
        Column(f"On {content.currency}", 34 * mm, "right"),
        Column("Rate a year", 30 * mm, "right"),
        Column(f"Interest {content.currency}", 36 * mm, "right"),
    ]
    rows: list[list[Cell]] = [
        [
            day_short_year(span.first),
            day_short_year(span.last),
            f"{span.days:,}",
            plain_amount(span.base, digits),
            rate(span.percent),
            f"{round_money(span.interest, digits + _FINER):,}",
        ]
        for span in interest.spans
    ]
    right: Command = ("ALIGN", (2, 1), (-1, -1), "RIGHT")
    return ruled_table(columns, rows, more=[right])


def _end(content: ReminderContent) -> list[Flowable]:
    ask = ask_words(content)
    # The terms of the invoice name a day that has passed.
    payment = replace(content.payment, terms="")
    return [
        *payment_slip(payment, content.total, content.currency, content.digits),
        *([words(ask, style(before=10))] if ask else []),
        *([words(content.note, style(SMALL, before=6))] if content.note else []),
    ]
