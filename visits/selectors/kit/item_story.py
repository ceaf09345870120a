"""One consumable: how long it lasts, what lies where, its lots and its recipe."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import cached_property

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from trimops.paper.to_svg import to_svg
from visits.documents.kit.fan import Fan, FanDay, draw_fan
from visits.domain.kit.forecast.item_forecast import DayAhead, ItemForecast
from visits.domain.kit.item_outlook import (
    Standing,
    chance_words,
    finding_words,
    item_answer,
    most_of,
    runs_out_on,
)
from visits.domain.kit.kit_sheet import OCCASIONS
from visits.domain.kit.order_why import Pressing, how_pressing
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.stock_lines import Cost, LotLeft
from visits.models import Consumable, StockLot, StockPlace
from visits.selectors.kit.dated_lot import DatedLot, dated_lots
from visits.selectors.kit.glance_row import standing_of
from visits.selectors.kit.kit_forecast import forecasts
from visits.selectors.kit.kit_sheets import recipe_of
from visits.selectors.kit.lots_left import LotAt
from visits.selectors.kit.open_supply import OnItsWay, open_supply
from visits.selectors.kit.reckoned_items import reckoned_items
from visits.selectors.kit.stock_ahead_of import stock_ahead_of
from visits.selectors.kit.stock_now import ItemStock, PlaceStock, stock_now

WEEK = 7
NO_USE = (
    "No use is foreseen: nothing was used so far, and nothing stands in its recipe that the work ahead has."
)

UNTOLD = "Count what lies in the store and in each van, or note what was bought: from then on you hear what it lasts."


@dataclass(frozen=True)
class WeekAhead:
    """The end of a week, with the chance of running out by then in words."""

    told: DayAhead

    @property
    def chance(self) -> str:
        return chance_words(self.told.run_out)


@dataclass(frozen=True)
class ItemStory:
    """`recipe` is (what uses it, how much); `value` what is left of it cost, first in, first out."""

    stock: ItemStock
    forecast: ItemForecast | None
    on_order: Sequence[OnItsWay]
    lots: Sequence[DatedLot]
    recipe: Sequence[tuple[str, Decimal]]
    value: Cost
    today: date

    @cached_property
    def standing(self) -> Standing:
        return standing_of(self.stock, self.on_order)

    @property
    def is_foreseen(self) -> bool:
        return self.standing.is_told and self.forecast is not None and self.forecast.cover_days is not None

    @property
    def answer(self) -> str:
        return item_answer(self.forecast, self.standing, self.today)

    @property
    def finding(self) -> str:
        if not self.standing.is_told:
            return UNTOLD
        if self.forecast is None or not self.is_foreseen:
            return NO_USE
        return finding_words(self.forecast, self.standing, self.today)

    @property
    def order_now(self) -> bool:
        """Whether the order list has it for today."""
        if self.forecast is None or not self.standing.is_told:
            return False
        return how_pressing(self.forecast, self.today) is Pressing.TODAY

    @property
    def to_count(self) -> StockPlace | None:
        """Where to count first: below nought, or anywhere as long as nobody has said what lies there."""
        short = [each.place for each in self.stock.places if each.is_short]
        untold = [] if self.standing.is_told else [each.place for each in self.stock.places]
        return next(iter([*short, *untold]), None)

    @property
    def reorder_point(self) -> Decimal | None:
        return (
            most_of(self.standing.unit, self.forecast.reorder_point)
            if self.forecast and self.is_foreseen
            else None
        )

    @property
    def weeks(self) -> list[WeekAhead]:
        if self.forecast is None or not self.is_foreseen:
            return []
        return [WeekAhead(day) for day in self.forecast.days[WEEK - 1 :: WEEK]]

    @cached_property
    def fan(self) -> str:
        """What will be left, as an SVG; empty where no use is foreseen."""
        if self.forecast is None or not self.is_foreseen:
            return ""
        drawing = draw_fan(fan_of(self.forecast, self.standing, self.on_order, self.today))
        return to_svg(drawing, "kit-picture") if drawing else ""


def item_story(business: Business, item: Consumable, today: date) -> ItemStory:
    """Some twenty queries, always as many."""
    scope = Scope(business.pk)
    reckoned = reckoned_items(scope, [item.pk])[item.pk]
    stock, supply = _stock_of(scope, item), open_supply(scope).get(item.pk, ())
    lots = _lots(scope, reckoned.lots_left)
    ahead = {item.pk: stock_ahead_of(stock, supply, lots)}
    return ItemStory(
        stock=stock,
        forecast=forecasts(scope, [item], ahead, today).get(item.pk),
        on_order=supply,
        lots=dated_lots(stock, lots, today),
        recipe=[(OCCASIONS[occasion], quantity) for occasion, quantity in recipe_of(item).items()],
        value=reckoned.value,
        today=today,
    )


def _stock_of(scope: Scope, item: Consumable) -> ItemStock:
    """Nothing anywhere of what is out of use and used up. Four queries, or five."""
    found = next((stock for stock in stock_now(scope) if stock.consumable.pk == item.pk), None)
    return found or ItemStock(item, [PlaceStock(place) for place in StockPlace.objects.within(scope)])


def _lots(scope: Scope, left: Mapping[int, Sequence[LotLeft]]) -> list[LotAt]:
    """What is left by place, with its lots. One query."""
    rows = StockLot.objects.within(scope).in_bulk(
        {each.lot for lots in left.values() for each in lots if each.lot}
    )
    return [
        LotAt(place, rows[each.lot] if each.lot else None, each.quantity)
        for place, lots in left.items()
        for each in lots
    ]


def fan_of(forecast: ItemForecast, standing: Standing, on_order: Sequence[OnItsWay], today: date) -> Fan:
    """What the drawing needs of a forecast. What should have come already is drawn as if it came tomorrow."""
    first = forecast.days[min(1, len(forecast.days) - 1)].day
    return Fan(
        unit="pieces"
        if standing.unit is Unit.EACH
        else "pairs"
        if standing.unit is Unit.PAIR
        else standing.unit.label,
        today=today,
        stock=standing.balance,
        days=tuple(FanDay(day.day, day.q50, day.q80, day.q95) for day in forecast.days),
        arrivals=tuple((max(each.expected_on, first), each.quantity) for each in on_order),
        reorder_point=most_of(standing.unit, forecast.reorder_point),
        runs_out=runs_out_on(forecast, standing, today),
        order_by=forecast.order_by,
    )
