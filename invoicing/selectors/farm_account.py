"""One farm's account over a time: every paper and payment with what is owed after it."""

from collections.abc import Callable, Iterable
from datetime import date
from decimal import Decimal
from typing import NamedTuple

from django.db.models import F, QuerySet, Sum

from farms.models import Farm
from invoicing.domain.account_lines import AccountMove, AccountWhat, FarmAccount, running_lines
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import SettledBy
from invoicing.models import Allocation, Invoice, Payment
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope


class Source(NamedTuple):
    """Rows of one kind: which field holds day and amount, whether they are owed (1) or take from it (-1)."""

    rows: "QuerySet[Invoice] | QuerySet[Payment] | QuerySet[Allocation]"
    day: str
    amount: str
    sign: int
    move: Callable[..., AccountMove]


def farm_account(scope: Scope, farm: Farm, first: date, last: date, currency: str = "") -> FarmAccount:
    """The account in one currency (empty: the business's), both days included; the number of queries is fixed.

    Balance = issued invoices - credit notes - payments + money paid back - written off, with money that a payer's other
    farm paid (or that went there) moved to where it counts. What was taken back or undone does not count.
    """
    currency = currency or farm.business.currency
    sources = list(_sources(scope, farm, currency))
    digits = minor_digits(currency)
    opening = sum((_before(source, first) for source in sources), Decimal(0))
    moves = [move for source in sources for move in _moves(source, first, last, digits)]
    opening = round_money(opening, digits)
    return FarmAccount(first, last, currency, opening, running_lines(opening, moves))


def _sources(scope: Scope, farm: Farm, currency: str) -> Iterable[Source]:
    papers = Invoice.objects.within(scope).issued().filter(farm=farm, currency=currency)
    papers = papers.only("number", "issued_on", "payable", "due_on", "kind")
    yield Source(papers.bills(), "issued_on", "payable", 1, _paper)
    yield Source(papers.credit_notes(), "issued_on", "payable", -1, _paper)
    payments = Payment.objects.within(scope).standing().filter(farm=farm, currency=currency)
    yield Source(payments, "received_on", "amount", -1, _payment)
    rows = Allocation.objects.within(scope).standing().filter(invoice__currency=currency)
    rows = rows.select_related("invoice", "credit_note", "payment").defer("invoice__seller", "invoice__buyer")
    here = rows.filter(invoice__farm=farm)
    yield Source(here.filter(kind=SettledBy.WRITE_OFF), "on", "amount", -1, _write_off)
    for path in ("payment__farm", "credit_note__farm"):
        away = {f"{path}__isnull": False}
        yield Source(here.filter(**away).exclude(**{path: farm}), "on", "amount", -1, _from_other)
        gone = rows.filter(**{path: farm}).exclude(invoice__farm=farm)
        yield Source(gone, "on", "amount", 1, _to_other)


def _before(source: Source, first: date) -> Decimal:
    rows = source.rows.filter(**{f"{source.day}__lt": first})
    return source.sign * (rows.aggregate(sum=Sum(F(source.amount)))["sum"] or Decimal(0))


def _moves(source: Source, first: date, last: date, digits: int) -> Iterable[AccountMove]:
    rows = source.rows.filter(**{f"{source.day}__gte": first, f"{source.day}__lte": last})
    for row in rows:
        amount = source.sign * round_money(getattr(row, source.amount), digits)
        yield source.move(row, getattr(row, source.day), amount)


def _paper(row: Invoice, day: date, amount: Decimal) -> AccountMove:
    what = AccountWhat.CREDIT_NOTE if row.is_credit_note else AccountWhat.INVOICE
    return AccountMove(day, what, amount, row.number, row.pk, row.due_on)


def _payment(row: Payment, day: date, amount: Decimal) -> AccountMove:
    what = AccountWhat.PAID_BACK if row.amount < 0 else AccountWhat.PAYMENT
    return AccountMove(day, what, amount, row.get_method_display(), row.pk, more=row.reference)


def _write_off(row: Allocation, day: date, amount: Decimal) -> AccountMove:
    return AccountMove(
        day, AccountWhat.WRITE_OFF, amount, row.invoice.number, row.invoice_id, more=row.reason
    )


def _from_other(row: Allocation, day: date, amount: Decimal) -> AccountMove:
    return AccountMove(day, AccountWhat.FROM_OTHER, amount, row.invoice.number, row.invoice_id)


def _to_other(row: Allocation, day: date, amount: Decimal) -> AccountMove:
    return AccountMove(day, AccountWhat.TO_OTHER, amount, row.invoice.number, row.invoice_id)
