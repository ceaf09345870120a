"""One consumable in the line of the kit's page."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from trimops.paper.to_svg import to_svg
from visits.documents.kit.cover_bars import Cover, cover_bar
from visits.domain.kit.forecast.item_forecast import ItemForecast
from visits.domain.kit.item_outlook import (
    Standing,
    chance_too_late,
    chance_words,
    lasts_words,
    runs_out_on,
)
from visits.domain.kit.kit_answer import ItemOutlook
from visits.domain.kit.kit_sheet import full_name
from visits.domain.kit.order_why import Pressing, how_pressing
from visits.domain.kit.stock_kinds import Unit
from visits.models import Consumable
from visits.selectors.kit.dated_lot import DatedLot
from visits.selectors.kit.open_supply import OnItsWay
from visits.selectors.kit.stock_now import ItemStock

SHOWN_DAYS = 28


def standing_of(stock: ItemStock, on_order: Sequence[OnItsWay]) -> Standing:
    """Where one consumable stands today."""
    return Standing(
        name=full_name(stock.consumable.name, stock.consumable.size),
        unit=Unit(stock.consumable.unit),
        balance=stock.balance,
        on_order=sum((each.quantity for each in on_order), Decimal(0)),
        below=tuple(each.place.name for each in stock.places if each.is_short),
        is_told=stock.is_told,
    )


@dataclass(frozen=True)
class GlanceRow:
    """What lies where, what is foreseen (None: nothing known), what is on its way, the lot whose date comes first."""

    stock: ItemStock
    forecast: ItemForecast | None
    on_order: Sequence[OnItsWay]
    next_lot: DatedLot | None
    today: date

    @property
    def item(self) -> Consumable:
        return self.stock.consumable

    @property
    def name(self) -> str:
        return full_name(self.item.name, self.item.size)

    @property
    def standing(self) -> Standing:
        return standing_of(self.stock, self.on_order)

    @property
    def below(self) -> tuple[str, ...]:
        return self.standing.below

    @property
    def order_now(self) -> bool:
        """Whether the order list has it for today."""
        return (
            self.is_told
            and self.forecast is not None
            and how_pressing(self.forecast, self.today) is Pressing.TODAY
        )

    @property
    def is_told(self) -> bool:
        """Whether anybody has said yet what lies anywhere."""
        return self.standing.is_told

    @property
    def is_late(self) -> bool:
        """Whether something on order should have come."""
        return any(each.is_late(self.today) for each in self.on_order)

    @property
    def outlook(self) -> ItemOutlook:
        gone = runs_out_on(self.forecast, self.standing, self.today) if self.forecast else None
        return ItemOutlook(self.name, gone, self.order_now, self.below, self.is_told)

    @property
    def lasts(self) -> str:
        return lasts_words(self.forecast, self.today) if self.is_told else "never counted"

    @property
    def chance(self) -> str:
        """Of running out before an order of today could be here."""
        if self.forecast is None or self.forecast.cover_days is None or not self.is_told:
            return ""
        return chance_words(chance_too_late(self.forecast))

    @property
    def bar(self) -> str:
        """Days of cover as an SVG, empty where no use is foreseen."""
        if self.forecast is None or self.forecast.cover_days is None or not self.is_told:
            return ""
        days = self.forecast.cover_days
        # What comes on a day is worked with from the day after.
        lead = (self.forecast.here_on - self.today).days + 1
        cover = Cover(None if days >= SHOWN_DAYS else days, lead, SHOWN_DAYS)
        return to_svg(cover_bar(cover, f"Lasts {self.lasts}"), "cover-bar")
