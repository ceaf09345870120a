"""How long each consumable lasts, what to order by when, and what a day's visits need."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from decimal import Decimal

from django.db.models import Sum

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.kit.forecast.item_forecast import DAYS, ItemForecast, days_needed, forecast_item
from visits.domain.kit.forecast.spread import Spread, total
from visits.domain.kit.forecast.stock_ahead import DatedLot, OnOrder, StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import use_ahead
from visits.domain.kit.forecast.use_model import UseModel
from visits.domain.kit.hundredths import exact_sum
from visits.domain.kit.kit_figures import KitFigures
from visits.models import Consumable, StockLot, StockMovement, Van
from visits.selectors.business_figures import figures_of
from visits.selectors.kit.booked_work import booked_work
from visits.selectors.kit.open_supply import open_supply
from visits.selectors.kit.reckoned_items import reckoned_items
from visits.selectors.kit.use_models import use_models

UseModels = Mapping[int, UseModel]
"""By consumable, what was learned of its use."""


def models_in_use(scope: Scope) -> dict[int, UseModel]:
    """By consumable in use, what was learned of its use; for who asks several of the questions below. Ten queries."""
    zone = Business.objects.get(pk=scope.business_id).zone
    items = Consumable.objects.within(scope).filter(is_active=True).values_list("pk", flat=True)
    return use_models(scope, list(items), zone)


def kit_forecast(
    scope: Scope, today: date, *, days: int = DAYS, models: UseModels | None = None
) -> dict[int, ItemForecast]:
    """By consumable in use, from this morning on. At most eighteen queries, eight fewer with `models` at hand."""
    items = list(Consumable.objects.within(scope).filter(is_active=True))
    stocks = _stocks(scope, [item.pk for item in items]) if items else {}
    return forecasts(scope, items, stocks, today, days=days, models=models)


def forecasts(
    scope: Scope,
    items: Sequence[Consumable],
    stocks: Mapping[int, StockAhead],
    today: date,
    *,
    days: int = DAYS,
    models: UseModels | None = None,
) -> dict[int, ItemForecast]:
    """Of those in use of these consumables, whose stock has been read already. Eleven queries, none without one."""
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
    """By consumable in use, what the visits booked for that van and day will use. Twelve queries.

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


def _stocks(scope: Scope, items: list[int]) -> dict[int, StockAhead]:
    rows = StockMovement.objects.within(scope).filter(consumable_id__in=items).order_by()
    sums = {
        item: exact_sum(total) for item, total in rows.values_list("consumable_id").annotate(Sum("quantity"))
    }
    supply, lots = open_supply(scope), _dated_lots(scope, items)
    return {
        item: StockAhead(
            balance=sums.get(item, Decimal(0)),
            on_order=tuple(OnOrder(way.expected_on, way.quantity) for way in supply.get(item, ())),
            lots=tuple(lots[item]),
        )
        for item in items
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
