"""A credit note is drafted: of everything that is left of an invoice, or of chosen lines."""

from collections.abc import Collection, Sequence
from datetime import datetime

from django.db import transaction

from invoicing.domain.amounts import RoundingRule
from invoicing.domain.credit_lines import (
    Credit,
    CreditableLine,
    CreditableWhole,
    CreditAsk,
    TooMuchCredit,
    credit_of,
)
from invoicing.domain.minor_units import minor_digits
from invoicing.models import BilledWork, DocumentAmount, Invoice, InvoiceKind, InvoiceLine
from invoicing.selectors.credit_left import creditable, credited, whole_key
from invoicing.services.total_draft import total_draft
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken


class CannotCredit(RuleBroken):
    """Only an issued invoice is credited, up to what is left of it, and with a reason."""

    code = "cannot_credit"


@transaction.atomic
def draft_credit_note(
    *,
    invoice: Invoice,
    asks: Sequence[CreditAsk] | None,
    reason: str,
    work_may_be_billed_again: bool,
    at: datetime,
    by: User,
    gone: Collection[BilledWork] = (),
) -> Invoice:
    """The draft of a credit note that points back to the invoice; `asks` None: of all that is left.

    Work of lines that are credited to the end may be billed again when the note is issued, if so told; work of `gone`
    (it is no longer there) is let go in any case. CannotCredit where more is asked than is left, drafts included.
    """
    original = invoice.locked()
    if not original.is_issued or original.is_credit_note:
        raise CannotCredit("Only an issued invoice is credited: change a draft instead.")
    if not reason.strip():
        raise CannotCredit("Say why it is credited: the reason stands on the credit note.")
    digits, rule = minor_digits(original.currency), RoundingRule(original.rounding_rule)
    try:
        credit = credit_of(creditable(original), credited(original), asks, digits, rule)
    except TooMuchCredit as fault:
        raise CannotCredit(str(fault)) from fault
    if not credit.lines:
        raise CannotCredit(f"All of {original.number} is credited already.")
    note = _note(original, reason.strip(), credit, at)
    lines = _store_lines(note, original, credit.lines)
    _store_whole(note, original, credit.whole)
    freed = credit.whole_lines if work_may_be_billed_again else frozenset()
    _mark(original, lines, freed, gone)
    return total_draft(invoice=note)


def _note(original: Invoice, reason: str, credit: Credit, at: datetime) -> Invoice:
    note = Invoice(
        business_id=original.business_id,
        kind=InvoiceKind.CREDIT_NOTE.value,
        farm_id=original.farm_id,
        payer_id=original.payer_id,
        corrects=original,
        reason=reason,
        currency=original.currency,
        rounding_rule=original.rounding_rule,
        tax_name=original.tax_name,
        order_number=original.order_number,
        buyer_reference=original.buyer_reference,
        tax_point=local_day(at, original.business.zone),
        drafted_at=at,
        rounding=credit.rounding,
        home_rate=original.home_rate,
    )
    note.full_clean()
    note.save()
    return note


def _store_lines(note: Invoice, original: Invoice, lines: Sequence[CreditableLine]) -> dict[int, InvoiceLine]:
    """The lines of the note by the key of the line that each credits."""
    known = {row.pk: row for row in InvoiceLine.objects.within(note.scope).filter(invoice=original)}
    rows = [_line(note, known[line.line_id], line, position) for position, line in enumerate(lines, start=1)]
    InvoiceLine.objects.bulk_create(rows)
    return {row.credits_id: row for row in rows if row.credits_id is not None}


def _line(note: Invoice, of: InvoiceLine, line: CreditableLine, position: int) -> InvoiceLine:
    is_amount = line.unit_price != of.unit_price
    return InvoiceLine(
        business_id=note.business_id,
        invoice=note,
        position=position,
        item=of.item,
        visit_id=of.visit_id,
        done_on=of.done_on,
        description=f"Part of: {of.description}"[:200] if is_amount else of.description,
        quantity=line.quantity,
        unit="C62" if is_amount else of.unit,
        unit_price=line.unit_price,
        allowance=line.allowance,
        allowance_percent=of.allowance_percent if line.allowance == of.allowance else None,
        allowance_reason=of.allowance_reason if line.allowance else "",
        tax_category=of.tax_category,
        tax_percent=of.tax_percent,
        tax_reason=of.tax_reason,
        tax_reason_code=of.tax_reason_code,
        net=line.net,
        why="",
        credits=of,
    )


def _store_whole(note: Invoice, original: Invoice, whole: Sequence[CreditableWhole]) -> None:
    rows = DocumentAmount.objects.within(note.scope).filter(invoice=original)
    known = {whole_key(row): row for row in rows}
    for part in whole:
        of = known[part.key]
        DocumentAmount.objects.create(
            business_id=note.business_id,
            invoice=note,
            is_charge=of.is_charge,
            amount=part.amount,
            reason=of.reason,
            tax_category=of.tax_category,
            tax_percent=of.tax_percent,
            tax_reason=of.tax_reason,
            tax_reason_code=of.tax_reason_code,
        )


def _mark(
    original: Invoice,
    lines: dict[int, InvoiceLine],
    freed: Collection[int],
    gone: Collection[BilledWork],
) -> None:
    """Note on the claims which line of the credit note lets go of them when it is issued."""
    claims = BilledWork.objects.within(original.scope).filter(invoice=original, holds=True)
    keys = {row.pk for row in gone}
    marked = [row for row in claims if row.line_id in lines and (row.line_id in freed or row.pk in keys)]
    for row in marked:
        row.credit_line = lines[row.line_id or 0]
    BilledWork.objects.within(original.scope).bulk_update(marked, ["credit_line"])
