"""A draft is brought to what the work says; what the office did by hand stays."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from decimal import Decimal

from django.db import transaction
from django.db.models import F

from invoicing.domain.amounts import line_net
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.pricing import DraftLine, PriceItem
from invoicing.domain.visit_work import WorkPiece, piece_words
from invoicing.models import BilledWork, DocumentAmount, Invoice, InvoiceLine
from invoicing.selectors.draft_work import PricedWork
from invoicing.services.total_draft import total_draft, total_new_draft
from trimops.kernel.money import round_money

OUT_OF_THE_WAY = 10_000
ITEMS = [item.value for item in PriceItem]


@transaction.atomic
def store_draft(*, invoice: Invoice, work: PricedWork, at: datetime) -> Invoice | None:
    """Put the priced lines into a locked draft; None (and no draft) when it comes to hold nothing.

    Lines by hand stay with the work they hold; all others are made anew, in the order of days and of the price list.
    A draft that is not stored yet is stored.
    """
    if invoice._state.adding:
        return _store_new(invoice, work, at)
    rows = InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice)
    rows.filter(is_by_hand=False).delete()
    kept = list(rows)
    fresh = [_row(invoice, line) for line in work.lines]
    if not kept and not fresh:
        invoice.delete()
        return None
    rows.update(position=F("position") + OUT_OF_THE_WAY)
    _put_in_order(kept, fresh)
    InvoiceLine.objects.within(invoice.scope).bulk_update(kept, ["position"])
    InvoiceLine.objects.bulk_create(fresh)
    _claim(invoice, zip(fresh, work.lines, strict=True), work.pieces)
    _cut_discounts(invoice, [*kept, *fresh])
    invoice.drafted_at = at
    return total_draft(invoice=invoice)


def _cut_discounts(invoice: Invoice, lines: Sequence[InvoiceLine]) -> None:
    """A discount by amount is cut to what the lines come to now; with nothing left to take off it falls away."""
    left: defaultdict[tuple[str, Decimal], Decimal] = defaultdict(Decimal)
    for line in lines:
        left[line.tax_category, line.tax_percent] += line.net
    rows = DocumentAmount.objects.within(invoice.scope).filter(invoice=invoice, is_charge=False)
    for row in rows.filter(percent__isnull=True):
        rate = row.tax_category, row.tax_percent
        amount = min(row.amount, left[rate])
        left[rate] -= amount
        if amount <= 0:
            row.delete()
        elif amount < row.amount:
            row.amount = amount
            row.save()


def _store_new(invoice: Invoice, work: PricedWork, at: datetime) -> Invoice | None:
    """Nothing was there before, so nothing is looked for."""
    fresh = [_row(invoice, line) for line in work.lines]
    if not fresh:
        return None
    _put_in_order((), fresh)
    invoice.drafted_at = at
    total_new_draft(invoice=invoice, lines=fresh)
    InvoiceLine.objects.bulk_create(fresh)
    _claim(invoice, zip(fresh, work.lines, strict=True), work.pieces)
    return invoice


def _put_in_order(kept: Sequence[InvoiceLine], fresh: Sequence[InvoiceLine]) -> None:
    """By day, visit and price list; lines that belong to no day stand at the end."""
    for position, row in enumerate(sorted([*kept, *fresh], key=_place), start=1):
        row.position = position


def _place(row: InvoiceLine) -> tuple[date, int, int]:
    return row.done_on or date.max, row.visit_id or 0, ITEMS.index(row.item)


def _row(invoice: Invoice, line: DraftLine) -> InvoiceLine:
    digits = minor_digits(invoice.currency)
    allowance = round_money(line.allowance, digits)
    return InvoiceLine(
        business_id=invoice.business_id,
        invoice=invoice,
        item=line.item.value,
        visit_id=line.visit_id or invoice.visit_id,
        done_on=line.done_on or invoice.tax_point,
        description=line.description,
        quantity=line.quantity,
        unit=line.unit,
        unit_price=line.unit_price,
        allowance=allowance,
        allowance_percent=line.allowance_percent,
        allowance_reason=line.allowance_reason,
        tax_category=line.tax_category,
        tax_percent=line.tax_percent,
        tax_reason=line.tax_reason,
        tax_reason_code=line.tax_reason_code,
        net=line_net(line.quantity, line.unit_price, digits, allowance),
        why=line.why[:200],
    )


def _claim(
    invoice: Invoice, pairs: Iterable[tuple[InvoiceLine, DraftLine]], pieces: Mapping[str, WorkPiece]
) -> None:
    BilledWork.objects.bulk_create(
        _claimed(line, line.visit_id, key, pieces.get(key))
        for line, priced in pairs
        if line.visit_id is not None
        for key in dict.fromkeys(priced.keys)
    )


def _claimed(line: InvoiceLine, visit_id: int, key: str, piece: WorkPiece | None) -> BilledWork:
    return BilledWork(
        business_id=line.business_id,
        invoice_id=line.invoice_id,
        line=line,
        visit_id=visit_id,
        trim_id=piece.trim_id if piece else None,
        key=key,
        words=(piece_words(piece) if piece else line.description)[:200],
    )
