"""A draft thrown away."""

import pytest

from invoicing.models import BilledWork, Invoice
from invoicing.selectors.ready_to_bill import unbilled_visits
from invoicing.services.discard_draft import discard_draft
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.lock_draft import NotADraft
from tests.factories import NOON, make_prices
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.billing import worked


def test_its_work_is_ready_to_be_billed_again(house):
    make_prices(house.business)
    visit = worked(house, 1)
    discard_draft(invoice=draft_invoice(visit=visit, at=NOON), at=NOON)
    assert not Invoice.objects.within(house.scope).exists()
    assert not BilledWork.objects.within(house.scope).exists()
    assert list(unbilled_visits(house.scope)) == [visit]


def test_an_issued_invoice_is_not_thrown_away(house):
    with pytest.raises(NotADraft):
        discard_draft(invoice=issued(house.farm, "10.00"), at=NOON)
