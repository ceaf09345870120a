"""Lists of invoices that stay quick with many thousands of them: no papers and no lines are read."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from django.db.models import Case, Count, DecimalField, F, Q, Sum, Value, When
from django.db.models.functions import Coalesce

from invoicing.models import Invoice
from invoicing.models.invoice import OPEN_AMOUNT, InvoiceQuerySet
from trimops.kernel.scope import Scope

HEAVY = ("seller", "buyer", "payment")
"""JSON columns that a list does not show."""


class Show(StrEnum):
    """Which issued papers a list shows."""

    ALL = ""
    OPEN = "open"
    OVERDUE = "overdue"
    CREDIT = "credit"

    @property
    def label(self) -> str:
        return {"": "All", "open": "Still to be paid", "overdue": "Overdue", "credit": "Credit notes"}[
            self.value
        ]


@dataclass(frozen=True)
class Wanted:
    """Words of the number, the farm or the payer; a year of issue; which."""

    words: str = ""
    year: int | None = None
    show: Show = Show.ALL


@dataclass(frozen=True)
class SumOfRows:
    """Of one currency, credit notes negative; `left` is still to be paid."""

    currency: str
    count: int
    net: Decimal
    tax: Decimal
    gross: Decimal
    left: Decimal


def issued_rows(scope: Scope, wanted: Wanted, today: date) -> InvoiceQuerySet:
    """Issued papers that match, the newest first, with farm and payer at hand."""
    rows: InvoiceQuerySet = Invoice.objects.within(scope).issued()
    if wanted.year is not None:
        rows = rows.filter(issued_on__gte=date(wanted.year, 1, 1), issued_on__lte=date(wanted.year, 12, 31))
    if wanted.show is Show.CREDIT:
        rows = rows.credit_notes()
    elif wanted.show is not Show.ALL:
        rows = rows.bills().filter(is_open=True)
    if wanted.show is Show.OVERDUE:
        rows = rows.filter(due_on__lt=today)
    for word in wanted.words.split():
        rows = rows.filter(
            Q(number__icontains=word) | Q(farm__name__icontains=word) | Q(payer__name__icontains=word)
        )
    return rows.order_by("-issued_on", "-id")


def by_day(rows: InvoiceQuerySet) -> InvoiceQuerySet:
    """The same rows with `day`, to order drafts among issued ones: the day of issue, of a draft its tax point."""
    return rows.annotate(day=Coalesce("issued_on", "tax_point"))


def for_list(rows: InvoiceQuerySet) -> InvoiceQuerySet:
    """The same rows as a list shows them."""
    return rows.select_related("farm", "payer").defer(*HEAVY)


def sums_of(rows: InvoiceQuerySet) -> list[SumOfRows]:
    """By currency, over all rows and not one page of them. One query."""
    sign = Case(
        When(kind="credit_note", then=Value(Decimal(-1))),
        default=Value(Decimal(1)),
        output_field=DecimalField(max_digits=1, decimal_places=0),
    )
    out = DecimalField(max_digits=18, decimal_places=4)
    found = (
        rows.order_by()
        .values("currency")
        .annotate(
            count=Count("pk"),
            net_sum=Sum(F("net") * sign, output_field=out),
            tax_sum=Sum(F("tax") * sign, output_field=out),
            gross_sum=Sum(F("gross") * sign, output_field=out),
            left=Sum(OPEN_AMOUNT * sign, filter=Q(is_open=True), output_field=out, default=0),
        )
        .order_by("currency")
    )
    return [
        SumOfRows(
            row["currency"], row["count"], row["net_sum"], row["tax_sum"], row["gross_sum"], row["left"]
        )
        for row in found
    ]


def years_issued(scope: Scope) -> Sequence[int]:
    """Years in which something was issued, the newest first. Two look-ups at the ends of an index."""
    rows = Invoice.objects.within(scope).issued().order_by("issued_on").values_list("issued_on", flat=True)
    first, last = rows.first(), rows.last()
    return range(last.year, first.year - 1, -1) if first and last else []


def draft_rows(scope: Scope) -> InvoiceQuerySet:
    """Drafts in the order in which they are walked through: the oldest work first."""
    rows: InvoiceQuerySet = Invoice.objects.within(scope).drafts()
    return for_list(rows).order_by("tax_point", "id")


def ready_drafts(scope: Scope, today: date) -> InvoiceQuerySet:
    """Drafts of invoices that may go out: no credit notes, and no month that still runs. The oldest work first."""
    return draft_rows(scope).bills().exclude(period_until__gte=today)


def next_draft(scope: Scope, today: date, after: Invoice | None = None) -> Invoice | None:
    """The draft to look at next: not one of a month that still runs. After the last comes the first again."""
    rows = draft_rows(scope).exclude(period_until__gte=today)
    if after is None:
        return rows.first()
    rows = rows.exclude(pk=after.pk)
    later = Q(tax_point__gt=after.tax_point) | Q(tax_point=after.tax_point, pk__gt=after.pk)
    return rows.filter(later).first() or rows.first()
