"""One line of a draft is changed by hand: its text, how many, or the discount."""

from dataclasses import dataclass
from decimal import Decimal

from django.db import transaction

from invoicing.domain.amounts import line_net
from invoicing.domain.discount import Discount, amount_off, discount_words
from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice, InvoiceLine
from invoicing.services.open_draft import ChangeRefused, Hand, keep_edit, open_draft
from invoicing.services.total_draft import total_draft
from trimops.kernel.money import round_money


@dataclass(frozen=True)
class LineChange:
    """What the line becomes; the discount is off quantity x unit price."""

    description: str
    quantity: Decimal
    discount: Discount


@transaction.atomic
def change_line(*, line: InvoiceLine, change: LineChange, hand: Hand) -> Invoice:
    """The line from then on is the office's: drafting anew leaves it, with the work it holds. ChangeRefused."""
    invoice = open_draft(invoice=line.invoice, hand=hand)
    row = line.locked()
    before = _words(row)
    _put(row, change, hand, minor_digits(invoice.currency))
    row.full_clean()
    row.save()
    keep_edit(invoice=invoice, hand=hand, what=f"{before} became {_words(row)}")
    return total_draft(invoice=invoice)


def _put(row: InvoiceLine, change: LineChange, hand: Hand, digits: int) -> None:
    if not change.description.strip():
        raise ChangeRefused("Say what the line is for.")
    if change.quantity <= 0:
        raise ChangeRefused("How many must be above nought: strike the line instead.")
    of = line_net(change.quantity, row.unit_price, digits)
    try:
        row.allowance = amount_off(change.discount, of, digits)
    except ValueError as fault:
        raise ChangeRefused(str(fault)) from fault
    row.description, row.quantity = change.description.strip(), change.quantity
    row.allowance_percent = change.discount.percent or None
    row.allowance_reason = hand.reason.strip() if row.allowance else ""
    row.is_by_hand = True


def _words(row: InvoiceLine) -> str:
    off = discount_words(Discount(row.allowance_percent, None if row.allowance_percent else row.allowance))
    price = round_money(row.unit_price, 2)
    shown = price if price == row.unit_price else row.unit_price.normalize()
    return f"“{row.description}” {row.quantity.normalize():f} x {shown:f}, {off}"
