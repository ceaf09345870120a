"""How long each consumable lasts, what to order by when, and what a day's visits need."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, timedelta

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.kit.forecast.item_forecast import DAYS, ItemForecast, days_needed, forecast_item
from visits.domain.kit.forecast.spread import Spread, total
from visits.domain.kit.forecast.stock_ahead import DatedLot, OnOrder, StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import use_ahead
from visits.domain.kit.forecast.use_model import UseModel
from visits.domain.kit.kit_figures import KitFigures
from visits.models import Consumable, StockLot, Van
from visits.selectors.business_figures import figures_of
from visits.selectors.kit.booked_work import booked_work
from visits.selectors.kit.open_supply import OnItsWay, open_supply
from visits.selectors.kit.reckoned_items import reckoned_items
from visits.selectors.kit.stock_now import ItemStock, stock_now
from visits.selectors.kit.use_models import use_models

UseModels = Mapping[int, UseModel]
"""By consumable, what was learned of its use."""


def models_in_use(scope: Scope) -> dict[int, UseModel]:
    """By consumable in use, what was learned of its use; for who asks several of the questions below. Eight queries."""
    zone = Business.objects.get(pk=scope.business_id).zone
    items = Consumable.objects.within(scope).filter(is_active=True).values_list("pk", flat=True)
    return use_models(scope, list(items), zone)


def kit_forecast(scope: Scope, today: date, *, days: int = DAYS) -> dict[int, ItemForecast]:
    """By consumable in use, from this morning on. A fixed number of queries."""
    stocks = [stock for stock in stock_now(scope) if stock.consumable.is_active]
    ahead = stocks_ahead(scope, stocks, open_supply(scope))
    return forecasts(scope, [stock.consumable for stock in stocks], ahead, today, days=days)


def forecasts(
    scope: Scope,
    items: Sequence[Consumable],
    stocks: Mapping[int, StockAhead],
    today: date,
    *,
    days: int = DAYS,
    models: UseModels | None = None,
) -> dict[int, ItemForecast]:
    """Of those in use of these consumables, whose stock has been read already. Nine queries, none without one."""
    used = [item for item in items if item.is_active]
    if not used:
        return {}
    figures, zone = figures_of(scope).kit, Business.objects.get(pk=scope.business_id).zone
    terms = {item.pk: terms_of(item, figures) for item in used}
    needed = {key: days_needed(each, today, days) for key, each in terms.items()}
    booked = booked_work(scope, today, today + timedelta(days=max(needed.values()) - 1), zone)
    models = use_models(scope, list(terms), zone) if models is None else models
    found = {}
    for key, each in terms.items():
        ahead = use_ahead(models[key], booked, today, today + timedelta(days=needed[key] - 1))
        found[key] = forecast_item(key, ahead, stocks[key], each, days)
    return found


def day_needs(scope: Scope, day: date, van: Van, models: UseModels | None = None) -> dict[int, Spread]:
    """By consumable in use, what the visits booked for that van and day will use. Ten queries.

    A call that nobody has made yet is not among them.
    """
    zone = Business.objects.get(pk=scope.business_id).zone
    visits = [visit for visit in booked_work(scope, day, day, zone) if visit.van == van.pk]
    models = models_in_use(scope) if models is None else models
    return {
        item: total((model.of_visit(visit) for visit in visits), model.step) for item, model in models.items()
    }


def terms_of(item: Consumable, figures: KitFigures) -> SupplyTerms:
    """How it is bought, and the chance of not running out that is ordered for: its own, or the business's."""
    percent = figures.service_percent if item.service_percent is None else float(item.service_percent)
    return SupplyTerms(
        pack=item.pack,
        lead_days=item.lead_days,
        review_days=round(figures.review_days),
        service=percent / 100,
        shelf_days=item.shelf_days,
    )


def stocks_ahead(
    scope: Scope, stocks: Sequence[ItemStock], supply: Mapping[int, Sequence[OnItsWay]]
) -> dict[int, StockAhead]:
    """Of consumables whose stock and supply have been read already. At most six queries."""
    if not stocks:
        return {}
    lots = _dated_lots(scope, [stock.consumable.pk for stock in stocks])
    return {
        (key := stock.consumable.pk): StockAhead(
            balance=stock.balance,
            on_order=tuple(OnOrder(way.expected_on, way.quantity) for way in supply.get(key, ())),
            lots=tuple(lots[key]),
        )
        for stock in stocks
    }


def _dated_lots(scope: Scope, items: list[int]) -> defaultdict[int, list[DatedLot]]:
    """What is left of lots that have a date, wherever they lie. At most four queries."""
    rows = StockLot.objects.within(scope).filter(consumable_id__in=items).order_by()
    dates = {
        pk: (item, last) for pk, item, last in rows.values_list("pk", "consumable_id", "expires_on") if last
    }
    left: defaultdict[int, list[DatedLot]] = defaultdict(list)
    for reckoned in reckoned_items(scope, {item for item, _ in dates.values()}).values():
        for lots in reckoned.lots_left.values():
            for lot in lots:
                if lot.lot in dates:
                    item, last = dates[lot.lot]
                    left[item].append(DatedLot(lot.quantity, last))
    return left
