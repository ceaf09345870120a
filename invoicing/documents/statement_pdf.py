"""A statement of account as PDF: what was billed and paid, what is open, how to pay."""

from dataclasses import replace

from reportlab.platypus import Flowable

from invoicing.documents.paper_head import Fact, from_and_to, paper_head, to_and_facts
from invoicing.documents.payment_slip import payment_slip
from invoicing.documents.statement_content import StatementContent
from invoicing.documents.statement_lines import account_table, ageing_part
from trimops.paper.days import day_plain, day_short_year
from trimops.paper.figures import money
from trimops.paper.footing import footing
from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.styles import style, words


def statement_pdf(content: StatementContent) -> bytes:
    """The PDF. The same content gives the same bytes.

    Raises LogoUnreadable when the logo is no picture; ValueError if `made_at` has no time zone, or when the balances
    do not follow from the lines.
    """
    _refuse_wrong_balances(content)
    story = [*_head(content), account_table(content), *ageing_part(content), *_end(content)]
    told = f"account up to {day_short_year(content.last)}"
    info = SheetInfo(
        title=statement_title(content),
        author=content.business.name,
        subject=f"Statement of account of {content.party.name}",
        made_at=content.made_at,
        footer=footing((content.business.name, content.party.name), told),
    )
    return build_sheet(story, info)


def statement_title(content: StatementContent) -> str:
    """The answer first: "£412.80 open on 30 Nov 2026"."""
    day = day_short_year(content.last)
    amount = money(abs(content.closing), content.currency, content.digits)
    if not content.closing:
        return f"Nothing is open on {day}"
    return f"{amount} open on {day}" if content.closing > 0 else f"{amount} to your good on {day}"


def _refuse_wrong_balances(content: StatementContent) -> None:
    balance = content.opening
    for line in content.lines:
        balance += line.debit - line.credit
        if balance != line.balance:
            raise ValueError(f"the balance of {line.day} is {line.balance}, not {balance}")
    if balance != content.closing:
        raise ValueError(f"the closing balance is {content.closing}, not {balance}")


def _head(content: StatementContent) -> list[Flowable]:
    facts: list[Fact] = [
        ("From and to", f"{day_short_year(content.first)} to {day_short_year(content.last)}"),
        ("Drawn up on", day_plain(content.made_at.date())),
    ]
    if content.farm_name and content.farm_name != content.party.name:
        facts.insert(0, ("Farm", content.farm_name))
    title, mark = statement_title(content), "Statement of account"
    business, party = from_and_to(content.business, content.party)
    return [
        *paper_head(business, content.tax_name, mark, title, content.logo),
        *to_and_facts(party, content.tax_name, facts),
    ]


def _end(content: StatementContent) -> list[Flowable]:
    slip = payment_slip(replace(content.payment, terms=""), content.closing, content.currency, content.digits)
    note = [words(content.note, style(before=8))] if content.note else []
    return [*slip, *note]
