"""The demo business, built from nothing: people, farms, herds, prices, and the months that lie behind."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from random import Random

from django.db import transaction

from trimops.kernel.clock import at_local, monday_of
from trimops.portal.demo.build_edges import build_blades, build_edges
from trimops.portal.demo.build_farms import build_farms
from trimops.portal.demo.build_herds import build_herds
from trimops.portal.demo.build_kit import build_stock
from trimops.portal.demo.build_open_feet import build_open_feet
from trimops.portal.demo.build_people import Crew, build_people
from trimops.portal.demo.build_prices import build_prices
from trimops.portal.demo.build_scorings import build_scorings
from trimops.portal.demo.build_trims import build_trims
from trimops.portal.demo.build_visits import build_visits, build_wash_downs
from trimops.portal.demo.demo_files import farm_sketches, rates
from trimops.portal.demo.demo_people import cast, kit
from trimops.portal.demo.invent_history import ZONE, HistoryMaker, Span
from trimops.portal.demo.past import Past
from trimops.portal.demo.wipe_demo import wipe_demo

DAYS_PER_MONTH = 365.25 / 12
Tell = Callable[[str, float], None]
"""Called with what is being done and how far all of it has come, 0 to 1."""


@dataclass(frozen=True)
class DemoWishes:
    """How large a demo is wanted, and relative to which day."""

    today: date
    farms: int = 40
    months: int = 18
    seconds: float = 10
    seed: int = 1

    @property
    def monday(self) -> date:
        """The first day of the coming week: today if it is a Monday."""
        return monday_of(self.today + timedelta(days=6))

    @property
    def first_day(self) -> date:
        return self.today - timedelta(days=round(self.months * DAYS_PER_MONTH))

    @property
    def dawn(self) -> datetime:
        """The hour of today at which the demo stands."""
        return at_local(self.today, time(6, 30), ZONE)


@dataclass(frozen=True)
class Built:
    """The crew of the new business and the history it was given."""

    crew: Crew
    past: Past
    farms: int
    cows: int


def draw_past(wishes: DemoWishes, tell: Tell) -> Past:
    """The history as plain values; nothing is stored."""
    sketches = list(farm_sketches()[: wishes.farms])
    span = Span(wishes.first_day, wishes.today, wishes.monday)
    maker = HistoryMaker(wishes.seed, rates(), sketches, cast().vans, span)
    days = maker.days()
    for number, day in enumerate(days):
        maker.work(day)
        tell(f"The {wishes.months} months before", number / len(days))
    return maker.past


def build_demo(wishes: DemoWishes, tell: Tell) -> Built:
    """Wipe the old demo, build the new one. NotADemoDatabase before anything is touched."""
    past = draw_past(wishes, lambda words, share: tell(words, share * 0.2))
    with transaction.atomic():
        tell("The old demo goes", 0.2)
        wipe_demo()
        return _store(wishes, past, tell)


def _store(wishes: DemoWishes, past: Past, tell: Tell) -> Built:
    since = at_local(wishes.first_day, time(8), ZONE)
    sketches = list(farm_sketches()[: wishes.farms])
    chance = Random(wishes.seed)
    tell("People, farms and herds", 0.22)
    crew = build_people(cast(), since)
    farms = build_farms(crew, cast(), sketches, since)
    herds = build_herds(farms, past, wishes.first_day, wishes.today, chance)
    build_scorings(crew, farms, sketches, herds, rates(), (wishes.first_day, wishes.today))
    build_prices(crew.business, kit(), wishes.first_day, wishes.today)
    tell("Visits noted", 0.3)
    visits = build_visits(crew, farms, herds, past.visits)
    tell("Feet noted", 0.35)
    trims = build_trims(crew, herds, past.visits, visits)
    tell("Re-checks, stock and knives", 0.5)
    build_open_feet(past, farms, herds, visits, trims, wishes.today)
    build_wash_downs(crew, past.visits, visits)
    build_stock(crew, kit(), past.visits, visits, trims)
    build_edges(crew, kit(), build_blades(crew, kit(), since), past.visits, (visits, trims), chance)
    return Built(crew, past, len(farms), sum(cow.left_on is None for herd in herds for cow in herd))
