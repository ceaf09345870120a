"""No more is credited of an invoice than stands on it."""

from decimal import Decimal

from django.db.models import F, Sum

from invoicing.domain.minor_units import minor_digits
from invoicing.models import Invoice
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money


class CreditsTooMuch(RuleBroken):
    """With this credit note more would be credited than was billed."""

    code = "credits_too_much"


def refuse_over_credit(*, credit_note: Invoice, original: Invoice) -> None:
    """CreditsTooMuch when the issued credit notes of `original` and this one exceed its net, or its total.

    The total is with tax and rounding and without what was prepaid: where parts are credited, the rounding of the last
    note takes up the cent by which their taxes differ. Call it with `original` locked, so that of two credit notes
    issued at the same moment the second sees the first.
    """
    if not original.is_issued:
        raise CreditsTooMuch("Only an issued invoice is credited: change the draft instead.")
    rows = Invoice.objects.within(original.scope).issued().credit_notes().filter(corrects=original)
    taken = rows.aggregate(net=Sum("net"), total=Sum(F("gross") + F("rounding")))
    left_net = original.net - (taken["net"] or Decimal(0))
    left_total = original.gross + original.rounding - (taken["total"] or Decimal(0))
    if credit_note.net > left_net:
        raise CreditsTooMuch(_words(original, left_net, " without tax"))
    if credit_note.gross + credit_note.rounding > left_total:
        raise CreditsTooMuch(_words(original, left_total, ""))


def _words(original: Invoice, left: Decimal, what: str) -> str:
    amount = round_money(left, minor_digits(original.currency))
    return f"Of {original.number} only {amount} {original.currency}{what} can still be credited."
