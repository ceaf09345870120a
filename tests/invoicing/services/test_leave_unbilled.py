"""Work left unbilled on the office's word."""

import pytest

from invoicing.models import BilledWork
from invoicing.selectors.ready_to_bill import unbilled_visits
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.leave_unbilled import NothingToLeave, bill_after_all, leave_unbilled
from invoicing.services.want_reason import ReasonMissing
from tests.factories import NOON, make_prices, under_way
from tests.invoicing.services.billing import hand, worked


def test_it_is_not_proposed_until_somebody_brings_it_back(house):
    make_prices(house.business)
    visit = worked(house, 1)
    assert leave_unbilled(visit=visit, hand=hand(house, "Goodwill")) == 3
    assert not unbilled_visits(house.scope).exists()
    assert draft_invoice(visit=visit, at=NOON) is None
    assert leave_unbilled(visit=visit, hand=hand(house)) == 0
    assert bill_after_all(visit=visit, hand=hand(house)) == 3
    assert draft_invoice(visit=visit, at=NOON).net == 30


def test_it_wants_a_reason(house):
    with pytest.raises(ReasonMissing):
        leave_unbilled(visit=worked(house, 1), hand=hand(house, " "))
    assert not BilledWork.objects.within(house.scope).exists()


def test_only_finished_work_is_left(house):
    visit = under_way(house.farm, house.van)
    with pytest.raises(NothingToLeave):
        leave_unbilled(visit=visit, hand=hand(house))
