"""The forecast of consumables whose stock a page has read already: that of `kit_forecast`, without reading it again."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.scope import Scope
from visits.domain.kit.forecast.item_forecast import DAYS, ItemForecast, days_needed, forecast_item
from visits.domain.kit.forecast.stock_ahead import DatedLot, OnOrder, StockAhead
from visits.domain.kit.forecast.use_ahead import use_ahead
from visits.models import Consumable
from visits.selectors.business_figures import figures_of
from visits.selectors.kit.booked_work import booked_work
from visits.selectors.kit.kit_forecast import terms_of
from visits.selectors.kit.lots_left import LotAt
from visits.selectors.kit.open_supply import OnItsWay
from visits.selectors.kit.stock_now import ItemStock
from visits.selectors.kit.use_models import use_models


def stock_ahead(stock: ItemStock, on_order: Iterable[OnItsWay], lots: Iterable[LotAt]) -> StockAhead:
    """What the forecast is held against: what lies there, what comes, and the lots that have a date."""
    return StockAhead(
        balance=stock.balance,
        on_order=tuple(OnOrder(each.expected_on, each.quantity) for each in on_order),
        lots=tuple(
            DatedLot(each.quantity, each.lot.expires_on) for each in lots if each.lot and each.lot.expires_on
        ),
    )


def outlooks(
    scope: Scope, zone: ZoneInfo, items: Sequence[Consumable], ahead: Mapping[int, StockAhead], today: date
) -> dict[int, ItemForecast]:
    """By consumable in use of those given. Ten queries, none without one."""
    used = {item.pk: item for item in items if item.is_active}
    if not used:
        return {}
    figures = figures_of(scope).kit
    terms = {key: terms_of(item, figures) for key, item in used.items()}
    needed = {key: days_needed(each, today) for key, each in terms.items()}
    booked = booked_work(scope, today, today + timedelta(days=max(needed.values()) - 1), zone)
    models = use_models(scope, list(used), zone)
    found = {}
    for key, each in terms.items():
        until = today + timedelta(days=needed[key] - 1)
        use = use_ahead(models[key], booked, today, until)
        found[key] = forecast_item(key, use, ahead[key], each, DAYS)
    return found
