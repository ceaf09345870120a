"""A discount on the whole draft, or a charge, at one tax rate or at each."""

from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction

from invoicing.domain.discount import Discount, amount_off, discount_words
from invoicing.domain.minor_units import minor_digits
from invoicing.models import DocumentAmount, Invoice, InvoiceLine
from invoicing.services.open_draft import ChangeRefused, Hand, keep_edit, open_draft
from invoicing.services.total_draft import total_draft


@dataclass(frozen=True)
class WholeChange:
    """`rate`: tax category and percent that it changes; None: each rate on the draft (percent only)."""

    is_charge: bool
    discount: Discount
    rate: tuple[str, Decimal] | None = None


@transaction.atomic
def set_whole_amount(*, invoice: Invoice, change: WholeChange, hand: Hand) -> Invoice:
    """Take it off or add it; the reason stands on the paper. ChangeRefused, LessThanNothing."""
    draft = open_draft(invoice=invoice, hand=hand)
    lines = list(InvoiceLine.objects.within(draft.scope).filter(invoice=draft))
    rates = {(line.tax_category, line.tax_percent): line for line in lines}
    if change.rate is not None and change.rate not in rates:
        raise ChangeRefused("No line of the draft has that tax rate.")
    if change.rate is None and change.discount.percent is None and len(rates) > 1:
        raise ChangeRefused("The draft has more than one tax rate: say which one the amount is for.")
    if not (change.discount.percent or change.discount.amount):
        raise ChangeRefused("Say how much, in percent or as an amount.")
    for rate in [change.rate] if change.rate else rates:
        of = sum((line.net for line in lines if (line.tax_category, line.tax_percent) == rate), Decimal(0))
        _store(draft, change, hand, rates[rate], of)
    words = f"{'charge' if change.is_charge else 'discount'} on the whole"
    keep_edit(invoice=draft, hand=hand, what=f"{words}: {discount_words(change.discount)}")
    return total_draft(invoice=draft)


def _store(draft: Invoice, change: WholeChange, hand: Hand, like: InvoiceLine, of: Decimal) -> None:
    digits, reason = minor_digits(draft.currency), hand.reason.strip()[:200]
    rows = DocumentAmount.objects.within(draft.scope).filter(
        invoice=draft,
        is_charge=change.is_charge,
        reason=reason,
        tax_category=like.tax_category,
        tax_percent=like.tax_percent,
    )
    if rows.exists():
        raise ChangeRefused("There is one with this reason at this tax rate already: take that off first.")
    most = of if not change.is_charge else Decimal(10) ** 9
    try:
        amount = amount_off(change.discount, of if change.discount.percent is not None else most, digits)
    except ValueError as fault:
        raise ChangeRefused(str(fault)) from fault
    row = DocumentAmount(
        business_id=draft.business_id,
        invoice=draft,
        is_charge=change.is_charge,
        amount=amount,
        base=of if change.discount.percent is not None else None,
        percent=change.discount.percent,
        reason=reason,
        tax_category=like.tax_category,
        tax_percent=like.tax_percent,
        tax_reason=like.tax_reason,
        tax_reason_code=like.tax_reason_code,
    )
    row.full_clean()
    row.save()


@transaction.atomic
def drop_whole_amount(*, amount: DocumentAmount, hand: Hand) -> Invoice:
    """Take a discount or a charge on the whole off the draft again."""
    draft = open_draft(invoice=amount.invoice, hand=hand)
    row = amount.locked()
    keep_edit(invoice=draft, hand=hand, what=f"“{row.reason}” taken off the whole")
    row.delete()
    return total_draft(invoice=draft)
