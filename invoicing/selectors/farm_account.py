"""One farm's account over a time: every paper and payment with what is owed after it."""

from collections.abc import Iterable
from datetime import date
from decimal import Decimal
from typing import NamedTuple, TypeVar

from django.db.models import Case, F, Model, Q, QuerySet, Sum, Value, When
from django.db.models.expressions import Combinable
from django.db.models.functions import Coalesce

from farms.models import Farm
from invoicing.domain.account_lines import AccountMove, AccountWhat, FarmAccount, running_lines
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import SettledBy
from invoicing.models import Allocation, Invoice, InvoiceKind, Payment
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope

M = TypeVar("M", bound=Model)
NOTHING = Decimal(0)


class Sources(NamedTuple):
    """What an account is made of: its papers, its payments, what of either was set against what."""

    papers: "QuerySet[Invoice]"
    payments: "QuerySet[Payment]"
    parts: "QuerySet[Allocation]"


def farm_account(scope: Scope, farm: Farm, first: date, last: date, currency: str = "") -> FarmAccount:
    """The account in one currency (empty: the business's), both days included. Four queries.

    Balance = issued invoices - credit notes - payments + money paid back - written off, with money that a payer's other
    farm paid (or that went there) moved to where it counts. What was taken back or undone does not count.
    """
    currency = currency or farm.business.currency
    sources, digits = _sources(scope, farm, currency), minor_digits(currency)
    opening = round_money(_before(sources, farm, first), digits)
    moves = list(_moves(sources, farm, (first, last), digits))
    return FarmAccount(first, last, currency, opening, running_lines(opening, moves))


def _sources(scope: Scope, farm: Farm, currency: str) -> Sources:
    papers = Invoice.objects.within(scope).issued().filter(farm=farm, currency=currency)
    payments = Payment.objects.within(scope).standing().filter(farm=farm, currency=currency)
    rows = Allocation.objects.within(scope).standing().filter(invoice__currency=currency)
    rows = rows.annotate(payer_farm=Coalesce("payment__farm_id", "credit_note__farm_id"))
    here, ours = Q(invoice__farm=farm), Q(payer_farm=farm.pk)
    others = Q(payer_farm__isnull=False) & ~ours
    parts = rows.filter(here & (Q(kind=SettledBy.WRITE_OFF) | others) | ours & ~here)
    return Sources(papers, payments, parts)


def _before(sources: Sources, farm: Farm, first: date) -> Decimal:
    """What was owed before that day; one query."""
    owed = Case(When(kind=InvoiceKind.CREDIT_NOTE, then=-F("payable")), default=F("payable"))
    moved = Case(When(invoice__farm=farm, then=-F("amount")), default=F("amount"))
    sums = _sum(sources.papers.filter(issued_on__lt=first), owed).union(
        _sum(sources.payments.filter(received_on__lt=first), -F("amount")),
        _sum(sources.parts.filter(on__lt=first), moved),
        all=True,
    )
    return sum((amount or NOTHING for amount in sums), NOTHING)


def _sum(rows: "QuerySet[M]", amount: Combinable) -> "QuerySet[M, Decimal]":
    """One row with the sum; none where there are no rows."""
    grouped = rows.order_by().annotate(all_of_it=Value(1)).values("all_of_it")
    found: QuerySet[M, Decimal] = grouped.annotate(total=Sum(amount)).values_list("total", flat=True)
    return found


def _moves(sources: Sources, farm: Farm, days: tuple[date, date], digits: int) -> Iterable[AccountMove]:
    papers = sources.papers.only("number", "issued_on", "payable", "due_on", "kind")
    for paper in papers.filter(issued_on__range=days):
        yield _paper(paper, digits)
    for payment in sources.payments.filter(received_on__range=days):
        yield _payment(payment, digits)
    parts = sources.parts.select_related("invoice").defer("invoice__seller", "invoice__buyer")
    for part in parts.filter(on__range=days):
        yield _part(part, farm, digits)


def _paper(row: Invoice, digits: int) -> AccountMove:
    what, sign = (AccountWhat.CREDIT_NOTE, -1) if row.is_credit_note else (AccountWhat.INVOICE, 1)
    assert row.issued_on is not None
    amount = sign * round_money(row.payable, digits)
    return AccountMove(row.issued_on, what, amount, row.number, row.pk, row.due_on)


def _payment(row: Payment, digits: int) -> AccountMove:
    what = AccountWhat.PAID_BACK if row.amount < 0 else AccountWhat.PAYMENT
    amount = -round_money(row.amount, digits)
    return AccountMove(row.received_on, what, amount, row.get_method_display(), row.pk, more=row.reference)


def _part(row: Allocation, farm: Farm, digits: int) -> AccountMove:
    amount, number = round_money(row.amount, digits), row.invoice.number
    if row.invoice.farm_id != farm.pk:
        return AccountMove(row.on, AccountWhat.TO_OTHER, amount, number, row.invoice_id)
    if row.kind == SettledBy.WRITE_OFF:
        return AccountMove(row.on, AccountWhat.WRITE_OFF, -amount, number, row.invoice_id, more=row.reason)
    return AccountMove(row.on, AccountWhat.FROM_OTHER, -amount, number, row.invoice_id)
