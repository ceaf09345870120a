import pytest

from invoicing.models import PriceList
from invoicing.services.drop_prices import drop_prices
from invoicing.services.set_prices import PricesBilledOn
from tests.factories import make_prices
from tests.invoicing.drafts import draft, issue


def test_a_list_that_was_not_billed_on_goes(house):
    drop_prices(price_list=make_prices(house.business))
    assert not PriceList.objects.within(house.scope).exists()


def test_a_list_that_was_billed_on_stays(house):
    row = make_prices(house.business)
    issue(draft(house), house)
    with pytest.raises(PricesBilledOn):
        drop_prices(price_list=row)
