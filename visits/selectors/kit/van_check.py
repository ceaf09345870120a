"""What a van needs for a day, what is in it, what is to be put in."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import ROUND_HALF_UP, Decimal

from trimops.kernel.clock import from_to, local_day
from trimops.kernel.scope import Scope
from visits.domain.kit.cold_day import DayWeather, cold_words
from visits.domain.kit.forecast.spread import Spread
from visits.domain.kit.kit_sheet import full_name
from visits.domain.kit.stock_kinds import Unit
from visits.domain.kit.van_load import (
    ItemInPlaces,
    Load,
    Portion,
    chance_of_all,
    load_for,
    sureness_of_each,
    wanted_of,
)
from visits.domain.visit_states import VisitState
from visits.models import Consumable, TypedWeather, Van, Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.kit.kit_forecast import UseModels, day_needs
from visits.selectors.kit.lot_portions import lot_portions
from visits.selectors.kit.stock_now import ItemStock, stock_now

STILL_TO_COME = (VisitState.PLANNED, VisitState.CONFIRMED)
MOST_A_DAY = 20
AHEAD = (*STILL_TO_COME, VisitState.UNDER_WAY)


@dataclass(frozen=True)
class CheckRow:
    """One consumable of the day. `van_balance` and `store_balance` are the ledger's, which may be below nought."""

    consumable: Consumable
    use: Spread
    load: Load
    van_balance: Decimal
    store_balance: Decimal

    @property
    def unit(self) -> Unit:
        return Unit(self.consumable.unit)

    @property
    def name(self) -> str:
        return full_name(self.consumable.name, self.consumable.size)

    @property
    def is_used(self) -> bool:
        return self.use.mean > 0

    @property
    def expected(self) -> Decimal:
        """Pieces to the half: less than a quarter of one is none to speak of."""
        step = Decimal("0.5") if self.unit.is_whole else Decimal(1)
        return (Decimal(self.use.mean) / step).to_integral_value(ROUND_HALF_UP) * step

    @property
    def chance_short(self) -> float:
        """Of running short on the day, once it is loaded."""
        return self.use.chance_above(self.load.carried)


@dataclass(frozen=True)
class VanCheck:
    """`day` None: no visit is booked for the van. `sure`: the chance, at least, that nothing runs short once it is
    loaded. `cold`: sentences on what does not stand the day's cold.
    """

    van: Van
    day: date | None
    farms: int
    cows: int
    rows: Sequence[CheckRow]
    sure: float
    weather: TypedWeather | None
    cold: Sequence[str]
    watches_cold: bool

    @property
    def to_load(self) -> list[CheckRow]:
        return [row for row in self.rows if row.load.load > 0]

    @property
    def missing(self) -> list[CheckRow]:
        return [row for row in self.rows if row.load.missing > 0]

    @property
    def stale(self) -> list[tuple[CheckRow, Portion]]:
        return [(row, portion) for row in self.rows for portion in row.load.stale]

    @property
    def below(self) -> list[CheckRow]:
        """Where the ledger is below nought: count it."""
        return [row for row in self.rows if row.van_balance < 0]


def van_check(
    scope: Scope, van: Van, day: date | None, today: date, models: UseModels | None = None
) -> VanCheck:
    """Of the van's work on `day`; None: on the next day on which it has visits. Fixed number of queries."""
    day = day or next(iter(days_with_visits(van, today, 1)), None)
    if day is None:
        return VanCheck(van, None, 0, 0, (), 1.0, None, (), False)
    visits = _visits(van, day)
    needs, weather = day_needs(scope, day, van, models), _weather(scope, day)
    rows = _rows(scope, van, day, needs)
    used = [row for row in rows if row.is_used]
    limits = [row for row in used if row.consumable.lowest_celsius is not None]
    return VanCheck(
        van=van,
        day=day,
        farms=len({visit.farm_id for visit in visits}),
        cows=sum(visit.head_count for visit in visits),
        rows=rows,
        sure=chance_of_all([(row.use, row.load.carried) for row in used]),
        weather=weather,
        cold=_cold(limits, weather),
        watches_cold=bool(limits),
    )


def days_with_visits(van: Van, today: date, most: int = 3) -> list[date]:
    """The first days from today on with a visit of the van that has not begun. One query."""
    zone = van.business.zone
    start, _ = from_to(today, today, zone)
    rows = Visit.objects.within(van.scope).in_state(*STILL_TO_COME).filter(van=van, planned_start__gte=start)
    hours = rows.order_by("planned_start").values_list("planned_start", flat=True)[: most * MOST_A_DAY]
    return list(dict.fromkeys(local_day(hour, zone) for hour in hours if hour))[:most]


def _visits(van: Van, day: date) -> list[Visit]:
    rows = Visit.objects.within(van.scope).in_state(*AHEAD).filter(van=van)
    return list(rows.starting_between(*from_to(day, day, van.business.zone)))


def _weather(scope: Scope, day: date) -> TypedWeather | None:
    return TypedWeather.objects.within(scope).filter(day=day).first()


def _rows(scope: Scope, van: Van, day: date, needs: Mapping[int, Spread]) -> list[CheckRow]:
    """What the day uses or the van holds too long, in the order of the kit."""
    portions, figures = lot_portions(scope), figures_of(scope).kit
    each = sureness_of_each(figures.service_percent / 100, sum(use.mean > 0 for use in needs.values()))
    found = []
    for stock in stock_now(scope):
        use = needs.get(stock.consumable.pk, Spread.nothing())
        own = stock.consumable.service_percent
        row = _row(stock, van, (day, use, each if own is None else float(own) / 100), portions)
        if row.is_used or row.load.stale or row.van_balance < 0:
            found.append(row)
    return found


def _row(
    stock: ItemStock,
    van: Van,
    wanted: tuple[date, Spread, float],
    portions: Mapping[tuple[int, int], Sequence[Portion]],
) -> CheckRow:
    item, (day, use, sure) = stock.consumable, wanted
    unit = Unit(item.unit)
    balances = {each.place.van_id: (each.place.pk, each.balance) for each in stock.places}
    (van_place, in_van), (store, in_store) = (balances.get(key, (0, Decimal(0))) for key in (van.pk, None))
    places = ItemInPlaces(
        unit, item.pack, in_van, portions.get((item.pk, van_place), ()), portions.get((item.pk, store), ())
    )
    load = load_for(places, wanted_of(use, unit, sure), day)
    return CheckRow(item, use, load, in_van, in_store)


def said_of(weather: TypedWeather) -> DayWeather:
    return DayWeather(weather.lowest_celsius, weather.highest_celsius)


def _cold(rows: Sequence[CheckRow], weather: TypedWeather | None) -> list[str]:
    said = said_of(weather) if weather else None
    words = [
        cold_words(row.consumable.name, row.consumable.lowest_celsius or Decimal(0), said) for row in rows
    ]
    return [each for each in words if each]
