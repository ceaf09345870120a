"""What of a payment is not used yet."""

from decimal import Decimal

from django.db.models import Sum

from invoicing.models import Allocation, Payment


def payment_rest(payment: Payment) -> Decimal:
    """The part of money received that is neither set against invoices nor paid back; 0 once it was taken back."""
    if payment.taken_back_at is not None or payment.amount < 0:
        return Decimal(0)
    used = Allocation.objects.within(payment.scope).standing().filter(payment=payment)
    back = Payment.objects.within(payment.scope).standing().filter(pays_back=payment)
    return payment.amount - _sum(used.aggregate(sum=Sum("amount"))) + _sum(back.aggregate(sum=Sum("amount")))


def _sum(found: dict[str, Decimal | None]) -> Decimal:
    return found["sum"] or Decimal(0)
