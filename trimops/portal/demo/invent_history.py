"""Eighteen months of two vans, day by day, drawn from the published rates. Same seed and days, same history."""

from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from math import hypot
from random import Random
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local
from trimops.portal.demo.chances import happens, swing
from trimops.portal.demo.demo_files import FarmSketch, Rates
from trimops.portal.demo.demo_people import VanSketch
from trimops.portal.demo.farm_state import FarmState, attach, first_states
from trimops.portal.demo.invent_length import (
    TodayLuck,
    cows_done_at,
    drive_really,
    expected_minutes,
    yard_ways,
)
from trimops.portal.demo.invent_visit import Errand, cows_done, errand_for
from trimops.portal.demo.past import CowSeen, Past, PastVisit
from visits.domain.visit_states import VisitReason

ZONE = ZoneInfo("Europe/London")
FIRST_MINUTE, LAST_MINUTE = 7.25 * 60, 15.5 * 60
MEAL_FROM, MEAL_MINUTES, MEAL_DRIFT = 11.5 * 60, 30, 20
KMH, CIRCUITY, LEG_MINUTES = 48, 1.35, 2


@dataclass(frozen=True)
class Span:
    """The days of the history: work is done from `first` until before `today`, booked until before `ends`."""

    first: date
    today: date
    ends: date


class HistoryMaker:
    """Walks through the days; `past` fills as it goes."""

    def __init__(
        self, seed: int, rates: Rates, sketches: list[FarmSketch], vans: tuple[VanSketch, ...], span: Span
    ) -> None:
        self._chance, self._rates, self._vans, self._span = Random(seed), rates, vans, span
        self.past = Past()
        middle = span.first + (span.today - span.first) / 2
        self._states = first_states(self._chance, rates, sketches, span.first, middle)
        self.past.herds = [len(state.cows) for state in self._states]
        attach(self._states, self.past, rates)
        # A source of their own: how long things took changes no foot.
        self._luck = Random(f"{seed} lengths")
        self._partings = Random(f"{seed} leaving")
        self._ways = [yard_ways(self._luck, rates.hidden_length, state.horn) for state in self._states]
        self._hands = [swing(self._luck, rates.hidden_length.trimmer_spread) for _ in vans]

    def days(self) -> list[date]:
        """The working days, Monday to Friday."""
        whole = (self._span.ends - self._span.first).days
        every = (self._span.first + timedelta(days=n) for n in range(whole))
        return [day for day in every if day.weekday() < 5]

    def work(self, day: date) -> None:
        """One day of both vans."""
        for state in self._states:
            state.feet.let_go(day)
            if day < self._span.today:
                state.some_leave(self._partings, self._rates, self.past, day)
                self.past.herds[state.number] = len(state.cows)
                state.reports_lame_cows(self._chance, self._rates, day)
        weather = swing(self._luck, self._rates.hidden_length.weather_spread)
        for number in range(len(self._vans)):
            self._drive(number, day, TodayLuck(weather, self._hands[number]))

    def _drive(self, van: int, day: date, luck: TodayLuck) -> None:
        hidden, base = self._rates.hidden_length, self._vans[van]
        late = self._luck.gammavariate(2, hidden.leave_late_minutes / 2)
        hungry = MEAL_FROM + self._luck.uniform(-MEAL_DRIFT, MEAL_DRIFT)
        trip = VanDay(
            van, day, luck, (base.east_km, base.north_km), FIRST_MINUTE, FIRST_MINUTE + late, hungry
        )
        for state, errand in self._errands(van, day):
            place = (state.sketch.east_km, state.sketch.north_km)
            minutes = _minutes_between(trip.here, place)
            told = expected_minutes(state.sketch, errand.heads, errand.corrective)
            if trip.planned + minutes + told > LAST_MINUTE:
                continue
            if day < self._span.today and happens(self._chance, self._rates.called_off):
                self._call_off(trip, Stop(state, errand, told, minutes))
                continue
            self._eat(trip)
            self._visit(trip, Stop(state, errand, told, minutes))
            trip.here = place

    def _eat(self, trip: "VanDay") -> None:
        """The meal, by the plan and really: at the first farm left after about half past eleven."""
        if trip.planned >= MEAL_FROM and not trip.had_planned:
            trip.planned, trip.had_planned = trip.planned + MEAL_MINUTES, True
        if trip.clock >= trip.hungry and not trip.had_really:
            hidden = self._rates.hidden_length
            trip.clock += self._luck.uniform(hidden.meal_shortest, hidden.meal_longest)
            trip.had_really = True

    def _errands(self, van: int, day: date) -> list[tuple[FarmState, Errand]]:
        found = [
            (state, errand)
            for state in self._states
            if self._van_of(state) == van
            and state.last_visit < day
            and (errand := errand_for(state, day)) is not None
        ]
        return sorted(found, key=_pressing)

    def _van_of(self, state: FarmState) -> int:
        place = (state.sketch.east_km, state.sketch.north_km)
        return min(
            range(len(self._vans)),
            key=lambda n: _minutes_between(place, (self._vans[n].east_km, self._vans[n].north_km)),
        )

    def _visit(self, trip: "VanDay", stop: "Stop") -> None:
        if trip.day >= self._span.today:
            return self._book(trip, stop)
        state, hidden = stop.state, self._rates.hidden_length
        number = len(self.past.visits)
        cows = cows_done(self._chance, self._rates, state, stop.errand, trip.day)
        yard = (state.sketch, self._ways[state.number])
        let_go, minutes = cows_done_at(self._luck, hidden, yard, trip.luck, [entry for _, entry in cows])
        begin = trip.clock + drive_really(self._luck, hidden, stop.drive)
        seen = tuple(CowSeen(cow, entry, at) for (cow, entry), at in zip(cows, let_go, strict=True))
        self.past.visits.append(
            replace(_put_down(trip, stop, begin), minutes=minutes, cows=seen, is_done=True)
        )
        for cow, entry in cows:
            state.feet.take(self._chance, (number, cow), entry, trip.day)
        state.last_visit = trip.day
        self._go_on(trip, stop, begin + minutes)
        return None

    def _book(self, trip: "VanDay", stop: "Stop") -> None:
        """A visit that is still to come."""
        self.past.visits.append(_put_down(trip, stop, trip.planned + stop.drive))
        stop.state.last_visit = self._span.ends
        self._go_on(trip, stop, trip.planned + stop.drive + stop.told)

    def _go_on(self, trip: "VanDay", stop: "Stop", clock: float) -> None:
        stop.state.lame.clear()
        if stop.errand.reason is VisitReason.ROUTINE:
            late = timedelta(days=self._chance.randrange(-3, 4))
            goes_on = trip.day < self._span.today and stop.state.round_goes_on(trip.day)
            days = 1 if goes_on else stop.state.sketch.interval_days
            stop.state.next_routine = trip.day + timedelta(days=days) + (timedelta() if goes_on else late)
        trip.planned, trip.clock = trip.planned + stop.drive + stop.told, clock

    def _call_off(self, trip: "VanDay", stop: "Stop") -> None:
        visit = _put_down(trip, stop, trip.planned + stop.drive)
        self.past.visits.append(replace(visit, is_called_off=True))
        stop.state.last_visit = trip.day


@dataclass
class VanDay:
    """Where a van is on a day: minutes after midnight by the plan, and really; its trimmer eats from `hungry` on."""

    van: int
    day: date
    luck: TodayLuck
    here: tuple[float, float]
    planned: float
    clock: float
    hungry: float
    had_planned: bool = False
    had_really: bool = False


@dataclass(frozen=True)
class Stop:
    """One farm of a van's day: what for, the minutes told beforehand, and the drive to it as reckoned."""

    state: FarmState
    errand: Errand
    told: int
    drive: float


def _pressing(pair: tuple[FarmState, Errand]) -> tuple[bool, date, int]:
    state, errand = pair
    return errand.reason is not VisitReason.URGENT, errand.due_until, state.number


def _put_down(trip: VanDay, stop: Stop, begin: float) -> PastVisit:
    """A visit not made yet, as it was told beforehand."""
    errand = stop.errand
    return PastVisit(
        farm=stop.state.number,
        van=trip.van,
        reason=errand.reason,
        due_from=errand.due_from,
        due_until=errand.due_until,
        planned=_instant(trip.day, trip.planned + stop.drive),
        start=_instant(trip.day, begin),
        expected_minutes=stop.told,
        minutes=float(stop.told),
        head_count=errand.heads,
        corrective_count=errand.corrective,
        cows=(),
        asked=errand.asked(),
        is_done=False,
    )


def _instant(day: date, minute: float) -> datetime:
    return at_local(day, time(int(minute) // 60, int(minute) % 60), ZONE)


def _minutes_between(a: tuple[float, float], b: tuple[float, float]) -> float:
    return hypot(a[0] - b[0], a[1] - b[1]) * CIRCUITY / KMH * 60 + LEG_MINUTES
