"""Drafts go, issued invoices stay, and of their visits as many as they bill."""

from django.utils import timezone

from farms.models import Farm
from invoicing.models import BilledWork, Invoice, InvoiceLine, LateWork
from invoicing.services.credit_invoice import draft_credit_note
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.forget_drafts import forget_drafts
from invoicing.services.leave_unbilled import leave_unbilled
from invoicing.services.note_late_work import note_late_work
from tests.factories import NOON, make_farm, make_prices
from tests.invoicing.services.billing import as_issued, by_month, hand, late_cow, worked
from visits.models import Trim


def test_of_an_issued_month_every_visit_stays_and_of_a_draft_none(house):
    make_prices(house.business)
    by_month(house.farm)
    of_march = [worked(house, days=days) for days in (0, 7)]
    for visit in of_march:
        issued = draft_invoice(visit=visit, at=NOON)
    as_issued(house, issued)
    draft_invoice(visit=worked(house, days=30), at=NOON)
    lines = InvoiceLine.objects.within(house.scope).filter(invoice=issued)
    before = list(lines.values())
    kept = forget_drafts(farm=house.farm)
    assert issued.visit_id is None
    assert (kept.drafts, kept.invoices) == (1, 1)
    assert kept.visits == {visit.pk for visit in of_march}
    assert Invoice.objects.within(house.scope).get() == issued
    assert list(lines.values()) == before
    work = BilledWork.objects.within(house.scope)
    assert set(work.values_list("invoice", flat=True)) == {issued.pk}
    assert set(work.values_list("words", flat=True)) == {""}


def test_the_draft_of_a_credit_note_goes_and_the_claims_of_its_invoice_hold(house):
    make_prices(house.business)
    issued = as_issued(house, draft_invoice(visit=worked(house), at=NOON))
    told = {"reason": "Wrong", "work_may_be_billed_again": True, "at": NOON, "by": house.office}
    draft_credit_note(invoice=issued, asks=None, **told)
    assert forget_drafts(farm=house.farm).drafts == 1
    assert Invoice.objects.within(house.scope).get() == issued
    claims = BilledWork.objects.within(house.scope)
    assert claims.exists()
    assert not claims.exclude(holds=True, credit_line=None).exists()


def test_what_was_left_unbilled_or_came_late_is_on_no_list_any_more(house):
    make_prices(house.business)
    visit, billed = worked(house), worked(house, days=7)
    leave_unbilled(visit=visit, hand=hand(house))
    as_issued(house, draft_invoice(visit=billed, at=NOON))
    late_cow(house, billed)
    note_late_work(visit=billed, at=NOON)
    kept = forget_drafts(farm=house.farm)
    assert kept.visits == {billed.pk}
    assert not BilledWork.objects.within(house.scope).filter(visit=visit).exists()
    assert not LateWork.objects.within(house.scope).exists()


def test_the_bare_visit_of_an_erased_farm_is_not_proposed_to_be_credited(house):
    make_prices(house.business)
    visit = worked(house)
    as_issued(house, draft_invoice(visit=visit, at=NOON))
    Trim.objects.within(house.scope).delete()
    assert note_late_work(visit=visit, at=NOON).gone > 0
    Farm.objects.within(house.scope).update(erased_at=timezone.now())
    visit.farm.refresh_from_db()
    assert note_late_work(visit=visit, at=NOON) is None
    assert not LateWork.objects.within(house.scope).exists()


def test_the_drafts_of_another_farm_stay(house):
    make_prices(house.business)
    other = make_farm(house.business, "High Croft", by=house.owner)
    draft = draft_invoice(visit=worked(house, farm=other), at=NOON)
    assert forget_drafts(farm=house.farm).drafts == 0
    assert Invoice.objects.within(house.scope).get() == draft
    assert BilledWork.objects.within(house.scope).exclude(words="").exists()
