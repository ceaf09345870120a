"""On the office's word, work that came after the bill is billed, and work that went is credited."""

from collections import defaultdict
from collections.abc import Sequence

from django.db import transaction

from invoicing.domain.billing_rhythm import BillingRhythm
from invoicing.domain.credit_lines import CreditAsk
from invoicing.models import BilledWork, Invoice, InvoiceLine
from invoicing.selectors.bill_difference import BillDifference, bill_difference
from invoicing.selectors.credit_left import credit_left
from invoicing.selectors.farm_terms import farm_terms
from invoicing.services.credit_invoice import draft_credit_note
from invoicing.services.draft_month import draft_month
from invoicing.services.lock_draft import lock_draft
from invoicing.services.make_draft import make_draft
from invoicing.services.note_late_work import note_late_work
from invoicing.services.open_draft import Hand
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money
from visits.models import Visit


class BillFits(RuleBroken):
    """The bill says what was done already."""

    code = "bill_fits"


@transaction.atomic
def draft_late_work(*, visit: Visit, hand: Hand) -> list[Invoice]:
    """A draft for what was added, at the prices of the day of the work, and a credit note for what is gone.

    Nothing is issued by this. BillFits when there is nothing to do, PriceMissing.
    """
    farm = visit.farm.locked()
    row = visit.locked()
    difference = bill_difference(row)
    if not difference:
        raise BillFits("The bill fits the work: there is nothing to add or to credit.")
    made = [_credit(invoice, claims, hand) for invoice, claims in _gone(difference)]
    if difference.added:
        if farm_terms(farm).rhythm == BillingRhythm.MONTH.value:
            day = local_day(row.finished_at or hand.at, row.business.zone)
            extra = draft_month(farm=farm, month=day, at=hand.at, late=[row])
        else:
            extra = make_draft(farm=farm, visit=row, draft=_draft_of(row), at=hand.at)
        made += [extra] if extra is not None else []
    note_late_work(visit=row, at=hand.at)
    return made


def _draft_of(visit: Visit) -> Invoice | None:
    """The draft of its own that lacks the work, locked: it was there when a price was missing."""
    found = Invoice.objects.within(visit.scope).bills().drafts().filter(visit=visit).first()
    return lock_draft(invoice=found) if found is not None else None


def _gone(difference: BillDifference) -> list[tuple[Invoice, list[BilledWork]]]:
    found: defaultdict[int, list[BilledWork]] = defaultdict(list)
    for row in difference.gone:
        found[row.invoice_id or 0].append(row)
    return [(rows[0].invoice, rows) for rows in found.values() if rows[0].invoice is not None]


def _credit(invoice: Invoice, claims: Sequence[BilledWork], hand: Hand) -> Invoice:
    return draft_credit_note(
        invoice=invoice,
        asks=_asks(invoice, claims),
        reason=hand.reason or "The work was put down otherwise.",
        work_may_be_billed_again=False,
        at=hand.at,
        by=hand.by,
        gone=claims,
    )


def _asks(invoice: Invoice, claims: Sequence[BilledWork]) -> list[CreditAsk]:
    """Of each line the share of its work that is gone, but no more than is left of it."""
    left, asks = credit_left(invoice), []
    for line in InvoiceLine.objects.within(invoice.scope).filter(pk__in=[row.line_id for row in claims]):
        gone = sum(row.line_id == line.pk for row in claims)
        held = BilledWork.objects.within(invoice.scope).filter(line=line).count()
        rest = left.get(line.pk)
        if rest is not None:
            quantity = min(round_money(line.quantity * gone / held, 4), rest.quantity)
            asks.append(CreditAsk(line.pk, quantity if 0 < quantity < rest.quantity else None))
    return asks
