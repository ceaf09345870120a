"""Drafts go, issued invoices stay."""

from invoicing.models import Invoice
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.forget_drafts import forget_drafts
from invoicing.services.issue_invoice import issue_invoice
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_prices,
    put_down,
    under_way,
)


def billed(house, number, days):
    visit = under_way(house.farm, house.van, TUESDAY_TEN.replace(day=3 + days))
    put_down(visit, make_cow(house.farm, number), blocked_foot())
    return draft_invoice(visit=finish(visit, house.trimmer), at=NOON)


def test_drafts_go_and_what_was_issued_stays_with_its_visit(house):
    make_prices(house.business)
    issued = issue_invoice(invoice=billed(house, "501", 0), at=NOON, by=house.office)
    billed(house, "502", 1)
    kept = forget_drafts(farm=house.farm)
    assert (kept.drafts, kept.invoices, kept.visits) == (1, 1, frozenset({issued.visit_id}))
    assert Invoice.objects.within(house.scope).get() == issued
