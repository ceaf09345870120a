"""Price lists with all that stands on them."""

from django.db.models import Prefetch

from invoicing.models import Price, PriceList, TravelBand
from invoicing.models.prices import PriceListQuerySet
from trimops.kernel.scope import Scope


def whole_lists(scope: Scope) -> PriceListQuerySet:
    """Every list with its prices and its bands of travel, in three queries."""
    prices = Prefetch("prices", queryset=Price.objects.within(scope).order_by("id"))
    bands = Prefetch("travel_bands", queryset=TravelBand.objects.within(scope))
    rows: PriceListQuerySet = PriceList.objects.within(scope)
    return rows.prefetch_related(prices, bands)
