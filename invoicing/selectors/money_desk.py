"""Counts and sums of what is to be billed, sent and paid: the office's desk."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db.models import Count, Q, Sum

from invoicing.models import Invoice, LateWork
from invoicing.models.invoice import OPEN_AMOUNT
from invoicing.selectors.ready_to_bill import month_drafts, unbilled_visits
from invoicing.selectors.sending_rows import sending_counts
from trimops.kernel.scope import Scope

NOUGHT = Decimal(0)


@dataclass(frozen=True)
class Heap:
    """How many papers of one currency, and what they come to; `sum` signed, credit notes negative."""

    currency: str
    count: int
    sum: Decimal


@dataclass(frozen=True)
class MoneyDesk:
    """Sums are by currency, the business's own first; nobody adds pounds to euros."""

    visits: int
    late: int
    months_over: int
    drafts: Sequence[Heap]
    open: Sequence[Heap]
    overdue: Sequence[Heap]
    not_sent: int
    mail_waits: int

    @property
    def draft_count(self) -> int:
        return sum(heap.count for heap in self.drafts)

    @property
    def has_anything(self) -> bool:
        return bool(self.visits or self.late or self.drafts or self.overdue)


def money_desk(scope: Scope, currency: str, today: date) -> MoneyDesk:
    """In seven queries. Overdue: open and the due day is before `today`."""
    owed, mail = _owed(scope, currency, today), sending_counts(scope)
    return MoneyDesk(
        visits=unbilled_visits(scope).count(),
        late=LateWork.objects.within(scope).count(),
        months_over=month_drafts(scope).filter(period_until__lt=today).count(),
        drafts=_heaps(scope, currency),
        open=[heap for heap, _ in owed],
        overdue=[heap for _, heap in owed if heap.count],
        not_sent=mail.to_see_to,
        mail_waits=mail.waiting,
    )


def _heaps(scope: Scope, currency: str) -> list[Heap]:
    rows = Invoice.objects.within(scope).drafts().order_by().values("currency")
    sums = rows.annotate(
        count=Count("pk"),
        bills=Sum("payable", filter=Q(kind="invoice"), default=NOUGHT),
        credit=Sum("payable", filter=Q(kind="credit_note"), default=NOUGHT),
    )
    found = [Heap(row["currency"], row["count"], row["bills"] - row["credit"]) for row in sums]
    return sorted(found, key=lambda heap: (heap.currency != currency, heap.currency))


def _owed(scope: Scope, currency: str, today: date) -> list[tuple[Heap, Heap]]:
    """What is open and what of it is overdue, by currency."""
    is_late = Q(due_on__lt=today)
    rows = Invoice.objects.within(scope).issued().bills().filter(is_open=True).order_by().values("currency")
    sums = rows.annotate(
        count=Count("pk"),
        left=Sum(OPEN_AMOUNT, default=NOUGHT),
        late_count=Count("pk", filter=is_late),
        late=Sum(OPEN_AMOUNT, filter=is_late, default=NOUGHT),
    )
    found = [
        (
            Heap(row["currency"], row["count"], row["left"]),
            Heap(row["currency"], row["late_count"], row["late"]),
        )
        for row in sums
    ]
    return sorted(found, key=lambda pair: (pair[0].currency != currency, pair[0].currency))
