"""A farm's month on one draft."""

from datetime import date

from invoicing.models import BilledWork, Invoice, LateWork
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.draft_month import draft_month
from tests.factories import NOON, make_farm, make_prices
from tests.invoicing.services.billing import as_issued, by_month, late_cow, worked

MARCH = date(2026, 3, 1)


def test_all_unbilled_visits_of_the_month_and_no_others_are_on_it(house):
    make_prices(house.business)
    other = make_farm(house.business, "High Croft", by=house.owner)
    for days in (0, 7, 30):
        worked(house, days=days)
    worked(house, days=1, farm=other)
    invoice = draft_month(farm=house.farm, month=MARCH, at=NOON)
    assert invoice.net == 2 * 40  # each: a call-out, two cows and a block at 10
    assert BilledWork.objects.within(house.scope).values("visit").distinct().count() == 2


def test_a_visit_billed_already_is_not_on_it_and_a_late_cow_of_it_is_noted(house):
    make_prices(house.business)
    visit = worked(house)
    as_issued(house, draft_invoice(visit=visit, at=NOON))
    by_month(house.farm)
    assert draft_month(farm=house.farm, month=MARCH, at=NOON) is None
    late_cow(house, visit)
    draft_invoice(visit=visit, at=NOON)
    assert LateWork.objects.within(house.scope).get().added == 1
    assert not Invoice.objects.within(house.scope).drafts().exists()


def test_after_the_month_was_issued_a_late_visit_begins_another_draft(house):
    make_prices(house.business)
    by_month(house.farm)
    first = draft_invoice(visit=worked(house), at=NOON)
    as_issued(house, first)
    second = draft_invoice(visit=worked(house, days=7), at=NOON)
    assert second.pk != first.pk
    assert second.period_from == MARCH
    assert second.net == first.net


def test_a_month_without_work_has_no_draft(house):
    make_prices(house.business)
    assert draft_month(farm=house.farm, month=MARCH, at=NOON) is None
