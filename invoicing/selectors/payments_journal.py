"""Money that came and went in a period, and what was written off in it."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from decimal import Decimal

from invoicing.documents.book_content import PaidRow, WriteOffRow
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import PaymentMethod, SettledBy
from invoicing.domain.tax_periods import Period
from invoicing.models import Allocation, Payment
from invoicing.selectors.payment_rows import paid_back
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope


def payments_journal(scope: Scope, period: Period) -> list[PaidRow]:
    """Payments that stand, by the day they came. Three queries."""
    rows = Payment.objects.within(scope).standing().filter(received_on__range=(period.first, period.last))
    payments = list(rows.select_related("farm").order_by("received_on", "id"))
    keys = [payment.pk for payment in payments]
    settled, back = _settled(scope, keys), paid_back(scope, keys)
    return [_row(payment, settled, back.get(payment.pk, Decimal(0))) for payment in payments]


def write_offs(scope: Scope, period: Period) -> list[WriteOffRow]:
    """Those that stand, by their day. One query."""
    rows = Allocation.objects.within(scope).standing().filter(kind=SettledBy.WRITE_OFF.value)
    found = rows.filter(on__range=(period.first, period.last)).select_related("invoice").order_by("on", "id")
    return [
        WriteOffRow(
            row.on,
            row.invoice.number,
            row.invoice.buyer.get("name", ""),
            row.invoice.currency,
            round_money(row.amount, minor_digits(row.invoice.currency)),
            row.reason,
        )
        for row in found
    ]


def _settled(scope: Scope, payments: Sequence[int]) -> dict[int, list[tuple[str, Decimal]]]:
    found: dict[int, list[tuple[str, Decimal]]] = defaultdict(list)
    rows = Allocation.objects.within(scope).standing().filter(payment__in=payments)
    for payment, number, amount in rows.values_list("payment_id", "invoice__number", "amount"):
        found[payment].append((number, amount))
    return found


def _row(payment: Payment, settled: Mapping[int, list[tuple[str, Decimal]]], back: Decimal) -> PaidRow:
    digits = minor_digits(payment.currency)
    parts = tuple((number, round_money(amount, digits)) for number, amount in settled.get(payment.pk, []))
    used = sum((amount for _, amount in parts), Decimal(0))
    left = payment.amount - used - back if payment.amount > 0 else Decimal(0)
    return PaidRow(
        payment.pk,
        payment.received_on,
        payment.farm.name,
        payment.payer_name,
        PaymentMethod(payment.method),
        payment.reference,
        payment.currency,
        round_money(payment.amount, digits),
        parts,
        round_money(left, digits),
    )
