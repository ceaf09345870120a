"""What was changed by hand is undone: the draft is made from the work alone."""

from django.db import transaction
from django.db.models import Max

from invoicing.models import BilledWork, DocumentAmount, Invoice, InvoiceLine
from invoicing.services.draft_month import draft_month
from invoicing.services.make_draft import make_draft
from invoicing.services.open_draft import Hand, keep_edit, open_draft


@transaction.atomic
def draft_anew(*, invoice: Invoice, hand: Hand) -> Invoice | None:
    """Lines by hand, discounts and struck work go, lines are made anew; the edits told so far stay, and this one.

    None when nothing is left to bill. PriceMissing.
    """
    farm = invoice.farm.locked()
    draft = open_draft(invoice=invoice, hand=hand)
    keep_edit(invoice=draft, hand=hand, what="drafted anew from the work; changes by hand dropped")
    BilledWork.objects.within(draft.scope).filter(invoice=draft, line__isnull=True).delete()
    DocumentAmount.objects.within(draft.scope).filter(invoice=draft).delete()
    rows = InvoiceLine.objects.within(draft.scope).filter(invoice=draft)
    rows.update(is_by_hand=False)
    draft.tax_point = rows.aggregate(last=Max("done_on"))["last"] or draft.tax_point
    draft.save(update_fields=["tax_point"])
    if draft.visit is not None:
        return make_draft(farm=farm, visit=draft.visit.locked(), draft=draft, at=hand.at)
    return draft_month(farm=farm, month=draft.period_from or draft.tax_point, at=hand.at)
