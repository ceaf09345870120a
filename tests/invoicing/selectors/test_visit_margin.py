"""What the work brought less what its material cost."""

from datetime import timedelta
from decimal import Decimal

import pytest
from django.test import Client
from django.urls import reverse

from invoicing.selectors.visit_margin import visit_margin
from invoicing.selectors.visits_billed import visits_billed
from invoicing.services.credit_invoice import draft_credit_note
from invoicing.services.draft_invoice import draft_invoice
from tests.factories import NOON, make_kit, make_prices
from tests.invoicing.services.billing import as_issued, worked
from tests.visits.services.kit.stock_words import bought
from visits.services.kit.stock_place import place_of_van


@pytest.fixture
def kit(house):
    """A block costs 2.30 and a ml of glue 10 p, so a blocked cow 4.80."""
    make_prices(house.business)
    kit = make_kit(house.business)
    bought(place_of_van(house.van), kit["wood"], 10, "23.00", at=NOON)
    bought(place_of_van(house.van), kit["glue"], 100, "10.00", at=NOON)
    return kit


def bill(house, **words):
    return draft_invoice(visit=worked(house, 2, **words), at=NOON)


def margin(invoice):
    return visit_margin(invoice, visits_billed(invoice))


def test_a_draft_says_what_will_be_left(house, kit):
    draft = bill(house)
    found = margin(draft)
    assert (found.brought, found.material) == (draft.net, Decimal("4.80"))
    assert found.left == draft.net - Decimal("4.80")
    assert (found.is_known, found.also_on) == (True, [])


def test_what_was_credited_was_not_brought(house, kit):
    invoice = as_issued(house, bill(house))
    note = draft_credit_note(
        invoice=invoice,
        asks=None,
        reason="Wrong farm",
        work_may_be_billed_again=False,
        at=NOON,
        by=house.office,
    )
    assert margin(invoice).brought == invoice.net
    as_issued(house, note, "INV-2026-0002")
    assert margin(invoice).brought == invoice.net - note.net
    assert margin(note) is None


def test_nothing_is_said_where_the_ledger_says_nothing_or_in_other_money(house, kit):
    draft = bill(house)
    assert visit_margin(draft, []) is None
    draft.currency = "EUR"
    assert margin(draft) is None


def test_where_nobody_keeps_stock_nothing_is_said(house):
    make_prices(house.business)
    assert margin(bill(house)) is None


def test_material_without_a_price_is_said(house, kit):
    bought(place_of_van(house.van), kit["glue"], 100, at=NOON - timedelta(days=1))
    found = margin(bill(house))
    assert (found.material, found.is_known) == (Decimal("2.30"), False)


def test_it_takes_eight_queries_for_one_visit_or_many(house, kit, django_assert_num_queries):
    draft = bill(house)
    visits = visits_billed(draft)
    assert draft.business == house.business  # read once, as the page has it
    worked(house, 1, days=7)
    with django_assert_num_queries(8):
        visit_margin(draft, visits)
    more = [*visits, *visits_billed(bill(house, days=14))]
    with django_assert_num_queries(8):
        found = visit_margin(draft, more)
    assert len(found.also_on) == 1


def test_the_office_reads_it_on_the_pages_and_the_farm_cannot_open_them(house, kit):
    draft = bill(house)
    (visit,) = visits_billed(draft)
    client = Client()
    client.force_login(house.office)
    page = client.get(reverse("invoice", args=[draft.pk])).content.decode()
    assert "Left after material" in page
    assert "£4.80" in page
    page = client.get(reverse("visit", args=[visit.pk])).content.decode()
    for words in ("£2.30", "£2.50", "<strong>£4.80</strong> without tax"):
        assert words in page
    client.force_login(house.client)
    for name, row in (("invoice", draft), ("visit", visit)):
        answer = client.get(reverse(name, args=[row.pk]))
        assert answer.status_code in (403, 404)
