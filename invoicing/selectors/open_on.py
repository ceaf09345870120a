"""What was open at the end of a day, by invoice and age."""

from collections import defaultdict
from datetime import date
from decimal import Decimal

from django.db.models import Q

from invoicing.documents.book_content import OpenRow
from invoicing.domain.minor_units import minor_digits
from invoicing.models import Allocation, Invoice
from invoicing.models.invoice import InvoiceQuerySet
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope

ZERO = Decimal(0)
COLUMNS = ("kind", "number", "buyer", "issued_on", "tax_point", "due_on", "currency", "payable")


def open_on(scope: Scope, day: date) -> list[OpenRow]:
    """As it stood at the end of `day` by what is known now: what was undone later counts as never done. Two queries."""
    papers = _perhaps_open(scope, day)
    settled = _settled_by(scope, day, papers)
    rows = papers.select_related("farm").only(*COLUMNS, "farm__name").order_by("due_on", "number")
    found = (_row(paper, settled.get(paper.pk, ZERO), day) for paper in rows.iterator(2000))
    return [row for row in found if row.still_open]


def _perhaps_open(scope: Scope, day: date) -> InvoiceQuerySet:
    """Those open now, and those settled after `day`: no other can have been open then."""
    later = Allocation.objects.within(scope).standing().filter(on__gt=day)
    after = Q(pk__in=later.values("invoice")) | Q(
        pk__in=later.filter(credit_note__isnull=False).values("credit_note")
    )
    rows: InvoiceQuerySet = Invoice.objects.within(scope).issued()
    return rows.filter(Q(is_open=True) | after, issued_on__lte=day, payable__gt=0)


def _settled_by(scope: Scope, day: date, papers: InvoiceQuerySet) -> dict[int, Decimal]:
    """What was set against each paper up to that day; a credit note is used up by what it was set off against."""
    found: dict[int, Decimal] = defaultdict(Decimal)
    keys = papers.order_by().values("pk")
    rows = Allocation.objects.within(scope).standing().filter(on__lte=day)
    rows = rows.filter(Q(invoice__in=keys) | Q(credit_note__in=keys))
    for invoice, note, amount in rows.values_list("invoice_id", "credit_note_id", "amount").iterator(5000):
        found[invoice] += amount
        if note is not None:
            found[note] += amount
    return found


def _row(paper: Invoice, settled: Decimal, day: date) -> OpenRow:
    digits = minor_digits(paper.currency)
    late = max(0, (day - paper.due_on).days) if paper.due_on and not paper.is_credit_note else 0
    return OpenRow(
        paper.pk,
        paper.number,
        paper.buyer.get("name", ""),
        paper.farm.name,
        paper.issued_on or paper.tax_point,
        paper.due_on,
        late,
        paper.currency,
        round_money(paper.sign * paper.payable, digits),
        round_money(paper.sign * (paper.payable - settled), digits),
    )
