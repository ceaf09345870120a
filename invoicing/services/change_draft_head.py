"""What stands above and below the lines of a draft is changed by hand."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction
from django.db.models import Max

from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice, InvoiceLine
from invoicing.services.open_draft import ChangeRefused, Hand, keep_edit, open_draft
from invoicing.services.total_draft import total_draft
from trimops.kernel.clock import local_day
from trimops.kernel.money import round_money


@dataclass(frozen=True)
class DraftHead:
    """Note, numbers of the buyer, what was paid before (with tax, up to the total).

    `tax_point` None: it stays. It is moved where the day of the work lies in a closed period: ask your accountant.
    `home_rate`: what one unit of the currency is in that of the country's tax.
    """

    note: str
    order_number: str
    buyer_reference: str
    prepaid: Decimal = Decimal(0)
    tax_point: date | None = None
    home_rate: Decimal | None = None


@transaction.atomic
def change_draft_head(*, invoice: Invoice, head: DraftHead, hand: Hand) -> Invoice:
    """Keep them, and what was changed. ChangeRefused when more is paid than billed; or a tax point cannot be."""
    draft = open_draft(invoice=invoice, hand=hand, lines=False)
    digits = minor_digits(draft.currency)
    if not 0 <= head.prepaid <= draft.gross:
        raise ChangeRefused(f"What was paid before is from 0 to {round_money(draft.gross, digits)}.")
    if draft.is_credit_note and head.prepaid:
        raise ChangeRefused("Nothing is paid before on a credit note.")
    if head.home_rate is not None and head.home_rate <= 0:
        raise ChangeRefused("A rate of exchange is above nought.")
    if head.prepaid != round_money(head.prepaid, digits):
        raise ChangeRefused("What was paid before has more decimals than the currency.")
    tax_point = head.tax_point or draft.tax_point
    _refuse_tax_point(draft, tax_point, hand)
    changed = [
        _told(words, before, after)
        for words, before, after in (
            ("note", draft.note, head.note.strip()),
            ("order number", draft.order_number, head.order_number.strip()),
            ("buyer's reference", draft.buyer_reference, head.buyer_reference.strip()),
            ("paid before", f"{round_money(draft.prepaid, digits)}", f"{round_money(head.prepaid, digits)}"),
            ("rate for the tax", _rate_words(draft.home_rate), _rate_words(head.home_rate)),
            ("tax point", f"{draft.tax_point:%-d %b %Y}", f"{tax_point:%-d %b %Y}"),
        )
        if before != after
    ]
    if not changed:
        return draft
    draft.note, draft.order_number = head.note.strip(), head.order_number.strip()
    draft.buyer_reference, draft.prepaid = head.buyer_reference.strip(), head.prepaid
    draft.tax_point, draft.home_rate = tax_point, head.home_rate
    keep_edit(invoice=draft, hand=hand, what="; ".join(changed))
    return total_draft(invoice=draft)


def _told(words: str, before: str, after: str) -> str:
    if not before:
        return f"{words} “{after}” put in"
    return f"{words}: “{before}” became “{after}”" if after else f"{words} “{before}” taken out"


def _rate_words(rate: Decimal | None) -> str:
    return "" if rate is None else f"{rate.normalize():f}"


def _refuse_tax_point(draft: Invoice, day: date, hand: Hand) -> None:
    if day == draft.tax_point:
        return
    if draft.is_credit_note:
        raise ChangeRefused("The tax point of a credit note is the day on which it is issued.")
    lines = InvoiceLine.objects.within(draft.scope).filter(invoice=draft)
    worked = lines.aggregate(last=Max("done_on"))["last"]
    if worked and day < worked:
        raise ChangeRefused(f"The tax point is not before the work of {worked:%-d %B %Y}.")
    if day > local_day(hand.at, draft.business.zone):
        raise ChangeRefused("The tax point does not lie ahead.")
