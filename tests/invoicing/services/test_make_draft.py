"""What a fresh draft starts with."""

from datetime import date

import pytest

from invoicing.models import FarmTerms, MoneyRules
from invoicing.services.make_draft import PriceMissing, make_draft, new_draft, price
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import worked


def test_the_rules_of_the_business_and_the_terms_of_the_farm_come_onto_it(house):
    MoneyRules.objects.create(business=house.business, rounding_rule="total", tax_name="MwSt")
    FarmTerms.objects.create(
        business=house.business, farm=house.farm, order_number="PO 7", buyer_reference="B"
    )
    draft = new_draft(house.farm, date(2026, 3, 3), NOON)
    assert (draft.rounding_rule, draft.tax_name, draft.order_number) == ("total", "MwSt", "PO 7")
    assert (draft.buyer_reference, draft.currency, draft.tax_point) == ("B", "GBP", date(2026, 3, 3))


def test_what_another_draft_holds_is_not_priced_again(house):
    visit = worked(house, 1)
    with pytest.raises(PriceMissing):
        price(house.farm, [visit], None)
    make_prices(house.business)
    draft = make_draft(farm=house.farm, visit=visit, draft=None, at=NOON)
    assert price(house.farm, [visit], None).lines == ()
    assert len(price(house.farm, [visit], draft).lines) == 3, "its own lines are made anew"
