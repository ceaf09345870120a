"""Worked visits to bill, for the tests of drafts and credit notes."""

from datetime import timedelta
from uuid import uuid4

from invoicing.domain.billing_rhythm import BillingRhythm
from invoicing.models import BilledWork, FarmTerms, InvoiceLine, InvoicePapers
from invoicing.services.open_draft import Hand
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.models import Trim


def hand(house, reason="Agreed on the telephone"):
    return Hand(house.office, NOON, reason)


def worked(house, cows=2, *, days=0, farm=None, **changes):
    """A finished visit: the first cow with a block, the others cut."""
    farm = farm or house.farm
    visit = under_way(farm, house.van, TUESDAY_TEN + timedelta(days=days), **changes)
    for n in range(cows):
        cow = make_cow(farm, f"{days}{n}-{uuid4().hex[:4]}")
        put_down(visit, cow, trimmed_foot() if n else blocked_foot())
    return finish(visit, house.trimmer)


def late_cow(house, visit):
    """A cow of a finished visit that came from a phone only now, as `show_cows` would leave her."""
    cow = make_cow(visit.farm, f"L{uuid4().hex[:4]}")
    return Trim.objects.create(
        business=house.business,
        visit=visit,
        cow=cow,
        kind="functional",
        recorded_at=visit.finished_at,
        recorded_by=house.trimmer,
    )


def as_issued(house, invoice, number="INV-2026-0001"):
    """The draft as issued, without drawing its papers: quick, for tests of what comes after."""
    invoice.papers = InvoicePapers.objects.create(
        business=house.business, pdf=b"%PDF", pdf_sha256="0" * 64, no_xml_because="A test."
    )
    invoice.number, invoice.state, invoice.issued_by = number, "issued", house.owner
    invoice.issued_on, invoice.issued_at, invoice.due_on = NOON.date(), NOON, NOON.date()
    invoice.is_open = True
    invoice.save()
    return invoice


def by_month(farm):
    return FarmTerms.objects.create(business=farm.business, farm=farm, rhythm=BillingRhythm.MONTH)


def lines_of(invoice):
    """Quantity and net by item, as numbers."""
    rows = InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice)
    return {row.item: (float(row.quantity), float(row.net)) for row in rows}


def line_of(invoice, item):
    return InvoiceLine.objects.within(invoice.scope).select_related("invoice").get(invoice=invoice, item=item)


def keys_of(invoice, **narrowed):
    rows = BilledWork.objects.within(invoice.scope).filter(invoice=invoice, **narrowed)
    return list(rows.values_list("key", flat=True))
