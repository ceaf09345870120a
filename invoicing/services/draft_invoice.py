"""A finished visit becomes the draft of an invoice."""

from collections.abc import Sequence
from datetime import datetime

from django.db import transaction

from invoicing.domain.amounts import AmountLine, invoice_amounts
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.pricing import DraftLine, NoPrice, draft_lines
from invoicing.models import Invoice, InvoiceLine
from invoicing.selectors.prices_held import prices_held
from invoicing.selectors.work_done import work_done
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import Visit


class VisitNotFinished(RuleBroken):
    """Only finished work is billed."""

    code = "visit_not_finished"


class PriceMissing(RuleBroken):
    """The price list lacks a price, or none holds on that day."""

    code = "price_missing"


@transaction.atomic
def draft_invoice(*, visit: Visit, at: datetime) -> Invoice | None:
    """The draft for a finished visit at the prices of its day; a draft made before is made anew.

    None when nothing was done that is charged; a draft made before then falls away. An invoice already issued is left
    as it is and returned.
    """
    row = visit.locked()
    if row.visit_state is not VisitState.FINISHED or row.finished_at is None:
        raise VisitNotFinished("Finish the visit first: only finished work is billed.")
    day = local_day(row.finished_at, row.business.zone)
    known = Invoice.objects.within(Scope(row.business_id)).bills().filter(visit=row).first()
    if known is not None and known.is_issued:
        return known
    try:
        lines = draft_lines(work_done(row), prices_held(Scope(row.business_id), day))
    except NoPrice as fault:
        raise PriceMissing(str(fault)) from fault
    if not lines:
        Invoice.objects.within(Scope(row.business_id)).drafts().filter(visit=row).delete()
        return None
    invoice = known or Invoice(business_id=row.business_id, farm_id=row.farm_id, visit=row)
    invoice.currency, invoice.tax_point, invoice.drafted_at = row.business.currency, day, at
    _total(invoice, lines)
    invoice.full_clean()
    invoice.save()
    _store_lines(invoice, lines)
    return invoice


def _total(invoice: Invoice, lines: Sequence[DraftLine]) -> None:
    digits = minor_digits(invoice.currency)
    amounts = invoice_amounts([_amount_line(line) for line in lines], digits=digits)
    invoice.line_sum, invoice.net, invoice.tax = amounts.line_sum, amounts.net, amounts.tax
    invoice.gross = invoice.payable = amounts.gross


def _amount_line(line: DraftLine) -> AmountLine:
    return AmountLine(line.quantity, line.unit_price, line.tax_category, line.tax_percent)


def _store_lines(invoice: Invoice, lines: Sequence[DraftLine]) -> None:
    InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice).delete()
    digits = minor_digits(invoice.currency)
    nets = invoice_amounts([_amount_line(line) for line in lines], digits=digits).line_nets
    for position, (line, net) in enumerate(zip(lines, nets, strict=True), start=1):
        stored = InvoiceLine(
            business_id=invoice.business_id,
            invoice=invoice,
            position=position,
            item=line.item.value,
            description=line.description,
            quantity=line.quantity,
            unit=line.unit,
            unit_price=line.unit_price,
            tax_category=line.tax_category,
            tax_percent=line.tax_percent,
            tax_reason=line.tax_reason,
            visit=invoice.visit,
            done_on=invoice.tax_point,
            net=net,
            why=line.why,
        )
        stored.full_clean()
        stored.save()
