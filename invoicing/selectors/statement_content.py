"""A farm's account as the values its paper is drawn from."""

from datetime import date, datetime
from decimal import Decimal

from farms.models import Farm
from invoicing.documents.invoice_content import Party, Payment
from invoicing.documents.statement_content import Ageing, StatementContent, StatementLine
from invoicing.domain.account_lines import AccountLine, AccountWhat
from invoicing.domain.ageing import Age
from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice
from invoicing.selectors.aged_debtors import Debtor, aged_debtors
from invoicing.selectors.farm_account import farm_account
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.parties import buyer_of, payment_of, seller_of
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
        business=_party(seller_of(farm.business, rules)),
        party=_party(_to_whom(scope, farm)),
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
        payment=_payment(payment_of(farm.business, rules), farm),
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
    debtors = [
        debtor
        for book in aged_debtors(scope, today, farm)
        for debtor in book.debtors
        if book.currency == currency
    ]
    told = {age.value: _sum(debtors, age) for age in Age}
    told["unused"] = sum((debtor.unused for debtor in debtors), Decimal(0))
    return Ageing(**told)


def _sum(debtors: list[Debtor], age: Age) -> Decimal:
    return sum((debtor.ages.get(age, Decimal(0)) for debtor in debtors), Decimal(0))


def _party(kept: dict[str, str]) -> Party:
    address = tuple(line for line in kept.get("address", "").splitlines() if line.strip())
    return Party(
        kept["name"],
        address,
        kept.get("vat_number", ""),
        kept.get("phone", ""),
        kept.get("email", ""),
        country=kept.get("country", ""),
        registration=kept.get("registration_number", ""),
        registration_name=kept.get("registration_name", ""),
    )


def _payment(kept: dict[str, str], farm: Farm) -> Payment:
    lines = [line.partition(":") for line in kept.get("details", "").splitlines() if line.strip()]
    return Payment(
        tuple((what.strip(), value.strip()) for what, _, value in lines),
        farm.name,
        "",
        kept.get("iban", ""),
        kept.get("bic", ""),
        kept.get("account_name", ""),
        "",
        kept.get("credit_terms", ""),
    )
