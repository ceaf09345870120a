"""Payments for a list, and what one was set against."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from django.db.models import Q, Sum

from invoicing.models import Allocation, Payment
from invoicing.models.payment import PaymentQuerySet
from trimops.kernel.scope import Scope

ZERO = Decimal(0)


class PaymentFilter(StrEnum):
    """Which payments are shown."""

    ALL = "all"
    WITH_REST = "rest"
    CASH = "cash"
    OUT = "out"
    TAKEN_BACK = "taken_back"

    @property
    def label(self) -> str:
        return _LABELS[self]

    @classmethod
    def of(cls, text: str) -> "PaymentFilter":
        """What the address asks for; all, when it makes no sense."""
        return cls(text) if text in list(cls) else cls.ALL


_LABELS = {
    PaymentFilter.ALL: "All",
    PaymentFilter.WITH_REST: "Not used up",
    PaymentFilter.CASH: "Cash",
    PaymentFilter.OUT: "Paid back",
    PaymentFilter.TAKEN_BACK: "Taken back",
}


@dataclass(frozen=True)
class PaymentRow:
    """A payment with what of it is not used yet; nothing, of money that went out or was taken back."""

    payment: Payment
    rest: Decimal


def payment_rows(
    scope: Scope, shown: PaymentFilter, text: str = "", at_least: Decimal = ZERO
) -> PaymentQuerySet:
    """The newest first. `text`: part of farm, payer or reference. `at_least`: of those not used up, so much is left."""
    rows = Payment.objects.within(scope).select_related("farm")
    if text:
        rows = rows.filter(
            Q(farm__name__icontains=text) | Q(payer_name__icontains=text) | Q(reference__icontains=text)
        )
    if shown is PaymentFilter.TAKEN_BACK:
        return rows.filter(taken_back_at__isnull=False)
    rows = rows.standing()
    if shown is PaymentFilter.CASH:
        rows = rows.filter(method="cash")
    if shown is PaymentFilter.OUT:
        rows = rows.filter(amount__lt=0)
    if shown is PaymentFilter.WITH_REST:
        return rows.filter(pk__in=_with_rest(scope, at_least))
    return rows


def with_rests(scope: Scope, rows: Iterable[Payment]) -> list[PaymentRow]:
    """These payments (of one page) with their rests, in two queries."""
    payments = list(rows)
    used = _used(scope, [payment.pk for payment in payments])
    return [PaymentRow(payment, _rest(payment, used)) for payment in payments]


def _rest(payment: Payment, used: Mapping[int, Decimal]) -> Decimal:
    if payment.taken_back_at is not None:
        return ZERO
    return max(payment.amount - used.get(payment.pk, ZERO), ZERO)


def _with_rest(scope: Scope, at_least: Decimal) -> list[int]:
    # because: summed in one pass; a subquery for each payment took minutes with twenty thousand
    used = _used(scope)
    amounts = Payment.objects.within(scope).standing().filter(amount__gt=0).order_by()
    left = ((key, amount - used.get(key, ZERO)) for key, amount in amounts.values_list("pk", "amount"))
    return [key for key, rest in left if rest > 0 and rest >= at_least]


def _used(scope: Scope, payments: Sequence[int] | None = None) -> dict[int, Decimal]:
    """By payment: what is set against papers, and what was paid back of it. None: of all payments."""
    parts = Allocation.objects.within(scope).standing().filter(payment__isnull=False).order_by()
    if payments is not None:
        parts = parts.filter(payment__in=payments)
    used: dict[int, Decimal] = defaultdict(Decimal)
    for key, amount in parts.values_list("payment_id", "amount"):
        used[key or 0] += amount
    for key, amount in paid_back(scope, payments).items():
        used[key] += amount
    return used


def paid_back(scope: Scope, payments: Sequence[int] | None = None) -> dict[int, Decimal]:
    """By payment, what of it went back. None: of all payments. One query."""
    rows = Payment.objects.within(scope).standing().filter(pays_back__isnull=False).order_by()
    if payments is not None:
        rows = rows.filter(pays_back__in=payments)
    back: dict[int, Decimal] = defaultdict(Decimal)
    for key, amount in rows.values_list("pays_back_id", "amount"):
        back[key or 0] -= amount
    return back


def payment_sums(rows: PaymentQuerySet) -> list[tuple[str, Decimal]]:
    """The sum of the rows in each currency."""
    return list(rows.order_by().values_list("currency").annotate(sum=Sum("amount")).order_by("currency"))


def parts_of(payment: Payment) -> list[Allocation]:
    """What it was set against, undone parts included."""
    rows = Allocation.objects.within(payment.scope).filter(payment=payment).select_related("invoice__farm")
    return list(rows.defer("invoice__seller", "invoice__buyer", "invoice__payment"))
