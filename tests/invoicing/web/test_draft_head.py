"""Tax point and rate of exchange are put into a draft by the office."""

import pytest
from django.urls import reverse

from invoicing.models import Invoice
from invoicing.services.draft_invoice import draft_invoice
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import worked


@pytest.fixture
def house(house):
    make_prices(house.business)
    return house


def head(office, draft, **told):
    address = reverse("invoice_head", args=[draft.pk])
    if not told:
        return office.get(address).content.decode()
    first = {"tax_point": f"{draft.tax_point:%Y-%m-%d}", "reason": "Agreed"}
    return office.post(address, {**first, **told})


def test_the_rate_is_asked_where_the_tax_must_stand_in_other_money(house, office):
    draft = draft_invoice(visit=worked(house), at=NOON)
    assert "is in GBP" not in head(office, draft)
    Invoice.objects.within(house.scope).update(currency="EUR")
    draft.refresh_from_db()
    assert "What one EUR is in GBP" in head(office, draft)
    assert head(office, draft, home_rate="0,8433").status_code == 302
    draft.refresh_from_db()
    assert str(draft.home_rate.normalize()) == "0.8433"
    assert head(office, draft, home_rate="0").status_code == 400


def test_a_tax_point_before_the_work_is_refused_in_words(house, office):
    draft = draft_invoice(visit=worked(house), at=NOON)
    refused = head(office, draft, tax_point="2026-03-01")
    assert refused.status_code == 400
    assert "The tax point is not before the work of 3 March 2026." in refused.content.decode()
    assert head(office, draft, tax_point="2026-03-04").status_code == 302
    draft.refresh_from_db()
    assert f"{draft.tax_point}" == "2026-03-04"
