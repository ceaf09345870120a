"""A farm's account as the values its paper is drawn from."""

from datetime import date, datetime

from farms.models import Farm
from invoicing.documents.statement_content import Ageing, StatementContent, StatementLine
from invoicing.domain.account_lines import AccountLine, AccountWhat
from invoicing.domain.ageing import Age
from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice
from invoicing.selectors.aged_debtors import AgedDebtors, aged_debtors
from invoicing.selectors.farm_account import farm_account
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.parties import buyer_of, party_on_paper, payment_of, payment_on_paper, seller_of
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope


def statement_content(
    scope: Scope, farm: Farm, first: date, last: date, at: datetime, currency: str = ""
) -> StatementContent:
    """The statement from `first` to `last`. How old the open amounts are is told as of today, and only on a statement
    that reaches today: what was open on an earlier day is no longer known.
    """
    account = farm_account(scope, farm, first, last, currency)
    rules = money_rules(scope)
    today = local_day(at, farm.business.zone)
    return StatementContent(
        business=party_on_paper(seller_of(farm.business, rules)),
        party=party_on_paper(_to_whom(scope, farm)),
        farm_name=farm.name,
        first=first,
        last=last,
        made_at=at.astimezone(farm.business.zone),  # because: its day stands on the paper
        currency=account.currency,
        digits=minor_digits(account.currency),
        opening=account.opening,
        lines=tuple(_line(line) for line in account.lines),
        closing=account.closing,
        ageing=_ageing(scope, farm, today, account.currency) if last >= today else None,
        payment=payment_on_paper(payment_of(farm.business, rules), farm.name),
        logo=bytes(rules.logo) if rules.logo else None,
        tax_name=rules.tax_name,
    )


def _to_whom(scope: Scope, farm: Farm) -> dict[str, str]:
    """Who pays; of a farm that was erased, whoever its last invoice was made out to: what is owed stays owed."""
    if farm.erased_at is not None:
        papers = Invoice.objects.within(scope).issued().filter(farm=farm).order_by("-issued_on", "-pk")
        if (last := papers.first()) is not None:
            return dict(last.buyer)
    return buyer_of(farm)


def _line(line: AccountLine) -> StatementLine:
    move = line.move
    due_on = move.due_on if move.what is AccountWhat.INVOICE else None
    return StatementLine(
        move.day, move.what.label, move.number, line.debit, line.credit, line.balance, due_on
    )


def _ageing(scope: Scope, farm: Farm, today: date, currency: str) -> Ageing:
    books = {book.currency: book for book in aged_debtors(scope, today, farm)}
    book = books.get(currency, AgedDebtors(currency, ()))
    told = {age.value: amount for age, amount in zip(Age, book.sums, strict=True)}
    return Ageing(**told, unused=book.unused)
