"""A year of the drawn history lived through again, evening by evening, with the orders that somebody advises.

Both ways of ordering buy the same packs from the same suppliers, begin with the same stock some months before, and are
measured over the last days only. What is advised is what the pages say: the forecast of that evening, from what was
used until then and booked by then; ordered is on the last evening that the forecast still allows.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from functools import cached_property

from tests.bench.visits.drawn_months import TODAY
from tests.bench.visits.drawn_uses import DrawnUses, DrawnVisit
from tests.bench.visits.replay_orders import (
    Advice,
    Bought,
    Evening,
    KeepTheHighest,
    Replayed,
    in_packs,
    replay,
)
from trimops.portal.demo.demo_people import ConsumableSketch
from visits.domain.kit.forecast.first_guess import first_guess
from visits.domain.kit.forecast.item_forecast import ItemForecast, days_needed, forecast_item
from visits.domain.kit.forecast.learn_use import learn_use
from visits.domain.kit.forecast.order_advice import last_day_to_order, protected_until
from visits.domain.kit.forecast.past_work import PastWork, past_work
from visits.domain.kit.forecast.stock_ahead import OnOrder, StockAhead, SupplyTerms
from visits.domain.kit.forecast.use_ahead import UseAhead, use_ahead
from visits.domain.kit.forecast.use_model import UseModel
from visits.domain.kit.forecast.visit_use import BookedVisit
from visits.domain.kit.kit_figures import KitFigures
from visits.domain.kit.supply_days import arrival_day

FIGURES = KitFigures()
LOOKED_AHEAD = 14
LEARNED_EVERY = 7
EVERY_DAY = frozenset(range(7))
DAY = timedelta(days=1)


@dataclass(frozen=True)
class LivedItem:
    """One consumable through the measured days."""

    item: ConsumableSketch
    lived: Replayed
    days: int

    @property
    def short(self) -> set[date]:
        return {day for day in self.lived.short if day > TODAY - timedelta(days=self.days + 1)}

    @property
    def mean_stock(self) -> float:
        """In its unit, of the evenings measured."""
        return float(sum(self.lived.stock[-self.days :], Decimal(0))) / self.days

    @property
    def money(self) -> float:
        return self.mean_stock * float(self.item.cost)


@dataclass
class Year:
    """A drawn history and the stretch of it that is lived through: `measured` days, after `before` to settle in."""

    drawn: DrawnUses
    measured: int = 365
    before: int = 90
    names: Sequence[str] = ()

    @property
    def items(self) -> list[int]:
        return [at for at, item in enumerate(self.drawn.items) if not self.names or item.name in self.names]

    @property
    def span(self) -> tuple[date, date]:
        return TODAY - timedelta(days=self.measured + self.before), TODAY - DAY

    @cached_property
    def first(self) -> date:
        return min(visit.booked.day for visit in self.drawn.visits)

    @cached_property
    def used(self) -> list[dict[date, Decimal]]:
        """By consumable, what each day used."""
        found: list[dict[date, Decimal]] = [defaultdict(Decimal) for _ in self.drawn.items]
        for visit in self.drawn.visits:
            for at, use in enumerate(visit.uses):
                found[at][visit.booked.day] += use.used
        return found

    @property
    def work_days(self) -> set[date]:
        first = TODAY - timedelta(days=self.measured)
        return {
            visit.booked.day for visit in self.drawn.visits if visit.is_made and visit.booked.day >= first
        }

    @cached_property
    def work(self) -> dict[date, PastWork]:
        return {}

    def follow(self, service: float = FIGURES.service_percent / 100) -> list[LivedItem]:
        """The orders of the forecast are followed."""
        return [self._live(at, FollowForecast(self, at, service)) for at in self.items]

    def keep_the_highest(self, days_more: int, looks: frozenset[int] = EVERY_DAY) -> list[LivedItem]:
        """The highest use ever seen over the lead days and `days_more` days more is kept, whenever somebody looks."""
        return [self._live(at, self._highest(at, days_more, looks)) for at in self.items]

    def know_the_future(self) -> list[LivedItem]:
        """Nobody can: the least that whole packs and lead days allow."""
        return [self._live(at, KnowTheFuture(self.used[at], self._lead(at))) for at in self.items]

    def _live(self, at: int, advice: Advice) -> LivedItem:
        item = self.drawn.items[at]
        pack, start = Decimal(item.pack), self._highest(at, round(FIGURES.review_days), EVERY_DAY)
        start(Evening(self.span[0] - DAY, Decimal(0), ()))
        stock = in_packs(start.highest, pack)
        lived = replay(Bought(pack, self._lead(at)), self.span, self.used[at], stock, advice)
        return LivedItem(item, lived, self.measured)

    def _highest(self, at: int, days_more: int, looks: frozenset[int]) -> KeepTheHighest:
        return KeepTheHighest(self.used[at], self.first, self._lead(at) + days_more, looks)

    def _lead(self, at: int) -> int:
        return int(self.drawn.items[at].words["lead_days"])

    def booked_at(self, first: date, last: date) -> list[BookedVisit]:
        """What was booked on the morning of `first` for the days from then to `last`."""
        days = (first + DAY * number for number in range((last - first).days + 1))
        return [visit.booked for day in days for visit in self._by_day.get(day, ()) if visit.known_on < first]

    @cached_property
    def _by_day(self) -> dict[date, list[DrawnVisit]]:
        found: defaultdict[date, list[DrawnVisit]] = defaultdict(list)
        for visit in self.drawn.visits:
            found[visit.booked.day].append(visit)
        return found

    def work_before(self, day: date) -> PastWork:
        if day not in self.work:
            self.work[day] = past_work(self.drawn.uses_before(day, 0))
        return self.work[day]


class FollowForecast:
    """Orders what the forecast says, on the last evening that it allows. Learns anew once a week."""

    def __init__(self, year: Year, at: int, service: float) -> None:
        self.year, self.at = year, at
        item = year.drawn.items[at]
        shelf = item.words.get("shelf_days")
        lead, review = int(item.words["lead_days"]), round(FIGURES.review_days)
        self.terms = SupplyTerms(Decimal(item.pack), lead, review, service, int(shelf) if shelf else None)
        self.learned_on = year.first
        self.model: UseModel | None = None

    def __call__(self, evening: Evening) -> Decimal:
        return self.forecast(evening).order_quantity if self.is_due(evening) else Decimal(0)

    def forecast(self, evening: Evening) -> ItemForecast:
        """What the page would say this evening."""
        last = evening.day + timedelta(days=days_needed(self.terms, evening.day, LOOKED_AHEAD) - 1)
        return forecast_item(0, self._ahead(evening.day, last), _stock(evening), self.terms, LOOKED_AHEAD)

    def is_due(self, evening: Evening) -> bool:
        """Whether an order of tomorrow may come too late: what the whole forecast says of it, sooner."""
        today = evening.day
        last = arrival_day(today + DAY, self.terms.lead_days)
        ahead = self._ahead(today, last)
        return last_day_to_order(ahead, _stock(evening), [0.0] * len(ahead.by_day), self.terms) == today

    def _ahead(self, today: date, last: date) -> UseAhead:
        return use_ahead(self._model(today), self.year.booked_at(today + DAY, last), today, last)

    def _model(self, day: date) -> UseModel:
        """The day's own work is among what was seen."""
        if self.model is None or (day - self.learned_on).days >= LEARNED_EVERY:
            past = self.year.drawn.uses_before(day + DAY, self.at)
            guess = first_guess(self.year.drawn.items[self.at].recipe)
            self.model, self.learned_on = learn_use(past, guess, self.year.work_before(day + DAY)), day
        return self.model


def _stock(evening: Evening) -> StockAhead:
    return StockAhead(evening.on_hand, tuple(OnOrder(day, much) for day, much in evening.coming))


class KnowTheFuture:
    """Orders on the last evening on which it is still in time, because it knows what will be used."""

    def __init__(self, used: dict[date, Decimal], lead_days: int) -> None:
        self.used, self.lead_days = used, lead_days

    def __call__(self, evening: Evening) -> Decimal:
        last = protected_until(SupplyTerms(Decimal(1), self.lead_days, 1, 0.5), evening.day)
        days = (evening.day + DAY * number for number in range(1, (last - evening.day).days + 1))
        return sum((self.used.get(day, Decimal(0)) for day in days), Decimal(0)) - evening.position
