"""Eighteen months of two vans, day by day, drawn from the published rates. Same seed and days, same history."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from math import hypot
from random import Random
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local
from trimops.portal.demo.chances import happens, swing
from trimops.portal.demo.demo_files import FarmSketch, Rates
from trimops.portal.demo.demo_people import VanSketch
from trimops.portal.demo.farm_state import FarmState, attach, first_states
from trimops.portal.demo.invent_length import expected_minutes, real_minutes
from trimops.portal.demo.invent_visit import Errand, cows_done, errand_for
from trimops.portal.demo.past import CowSeen, Past, PastVisit
from visits.domain.visit_states import VisitReason

ZONE = ZoneInfo("Europe/London")
FIRST_HOUR, LAST_MINUTE = time(7, 15), 15.5 * 60
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
        self._states = first_states(self._chance, rates, sketches, span.first)
        attach(self._states, self.past, rates)

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
                state.reports_lame_cows(self._chance, self._rates, day)
        weather = swing(self._chance, self._rates.hidden_length.weather_spread)
        for number in range(len(self._vans)):
            self._drive(number, day, weather)

    def _drive(self, van: int, day: date, weather: float) -> None:
        base = self._vans[van]
        clock, here = FIRST_HOUR.hour * 60.0 + FIRST_HOUR.minute, (base.east_km, base.north_km)
        for state, errand in self._errands(van, day):
            place = (state.sketch.east_km, state.sketch.north_km)
            begin = clock + _minutes_between(here, place)
            told = expected_minutes(state.sketch, errand.heads, errand.corrective)
            if begin + told > LAST_MINUTE:
                continue
            if happens(self._chance, self._rates.called_off) and day < self._span.today:
                self._call_off(van, state, errand, day, begin, told)
                continue
            minutes = self._visit(van, state, errand, day, begin, told, weather)
            clock, here = begin + minutes, place

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

    def _visit(
        self, van: int, state: FarmState, errand: Errand, day: date, begin: float, told: int, weather: float
    ) -> float:
        is_done = day < self._span.today
        number = len(self.past.visits)
        hidden = self._rates.hidden_length
        minutes = real_minutes(self._chance, hidden, told, weather, state.gates) if is_done else float(told)
        cows = cows_done(self._chance, self._rates, state, errand, day) if is_done else []
        start = _instant(day, begin)
        seen = tuple(
            CowSeen(cow, entry, minutes * (n + 1.5) / (len(cows) + 3)) for n, (cow, entry) in enumerate(cows)
        )
        self.past.visits.append(_put_down(van, state, errand, start, told, minutes, seen, is_done))
        for cow, entry in cows:
            state.feet.take(self._chance, (number, cow), entry, day)
        state.last_visit = day if is_done else self._span.ends
        state.lame.clear()
        if errand.reason is VisitReason.ROUTINE:
            late = timedelta(days=self._chance.randrange(-3, 4))
            state.next_routine = day + timedelta(days=state.sketch.interval_days) + late
        return minutes

    def _call_off(
        self, van: int, state: FarmState, errand: Errand, day: date, begin: float, told: int
    ) -> None:
        visit = _put_down(van, state, errand, _instant(day, begin), told, float(told), (), False)
        self.past.visits.append(PastVisit(**{**visit.__dict__, "is_called_off": True}))
        state.last_visit = day


def _pressing(pair: tuple[FarmState, Errand]) -> tuple[bool, date, int]:
    state, errand = pair
    return errand.reason is not VisitReason.URGENT, errand.due_until, state.number


def _put_down(
    van: int,
    state: FarmState,
    errand: Errand,
    start: datetime,
    told: int,
    minutes: float,
    seen: tuple[CowSeen, ...],
    is_done: bool,
) -> PastVisit:
    return PastVisit(
        farm=state.number,
        van=van,
        reason=errand.reason,
        due_from=errand.due_from,
        due_until=errand.due_until,
        start=start,
        expected_minutes=told,
        minutes=minutes,
        head_count=errand.heads,
        corrective_count=errand.corrective,
        cows=seen,
        asked=errand.asked(),
        is_done=is_done,
    )


def _instant(day: date, minute: float) -> datetime:
    return at_local(day, time(int(minute) // 60, int(minute) % 60), ZONE)


def _minutes_between(a: tuple[float, float], b: tuple[float, float]) -> float:
    return hypot(a[0] - b[0], a[1] - b[1]) * CIRCUITY / KMH * 60 + LEG_MINUTES
