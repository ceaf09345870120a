"""What a day's ribbon shows. All instants are aware and already in the zone whose clock is to be read."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from trimops.paper.colours import Meaning

Span = tuple[datetime, datetime]


@dataclass(frozen=True)
class RibbonDrive:
    """One drive, from wheels turning to wheels still."""

    leave: datetime
    arrive: datetime
    km: float


@dataclass(frozen=True)
class RibbonVisit:
    """One visit. `hygiene` 0 (closed, clean) to 3; `milking`: the farm's own milkings that day."""

    name: str
    start: datetime
    finish: datetime
    cows: int
    hygiene: int
    meaning: Meaning = Meaning.PLANNED
    milking: tuple[Span, ...] = ()


@dataclass(frozen=True)
class DayRibbon:
    """One day of one trimmer. `begins` and `ends` are the ends of the axis, so that several days line up."""

    title: str
    begins: datetime
    ends: datetime
    drives: tuple[RibbonDrive, ...] = ()
    visits: tuple[RibbonVisit, ...] = ()
    meal: Span | None = None

    def events(self) -> list[Span]:
        """Drives, visits and the meal, by time."""
        spans = [(d.leave, d.arrive) for d in self.drives] + [(v.start, v.finish) for v in self.visits]
        return sorted(spans + ([self.meal] if self.meal else []))

    def idle(self, shortest: timedelta = timedelta(minutes=10)) -> Iterator[Span]:
        """Stretches between the first and the last event in which nothing is planned."""
        events = self.events()
        last_end = events[0][1] if events else self.begins
        for start, end in events[1:]:
            if start - last_end >= shortest:
                yield last_end, start
            last_end = max(last_end, end)

    def milkings(self) -> Iterator[Span]:
        """Milkings at each visit's farm, cut to the time that belongs to that visit's part of the day."""
        ordered = sorted(self.visits, key=lambda visit: visit.start)
        for place, visit in enumerate(ordered):
            since = ordered[place - 1].finish if place else self.begins
            until = ordered[place + 1].start if place + 1 < len(ordered) else self.ends
            for start, end in visit.milking:
                if max(start, since) < min(end, until):
                    yield max(start, since), min(end, until)


@dataclass(frozen=True)
class TimeScale:
    """Time laid along millimetres."""

    begins: datetime
    ends: datetime
    first: float
    last: float

    def at(self, instant: datetime) -> float:
        """Where the instant lies, held within the axis. By elapsed time, also over a change of the clock."""
        begins, ends = self.begins.astimezone(UTC), self.ends.astimezone(UTC)
        part = (instant.astimezone(UTC) - begins) / (ends - begins)
        return self.first + min(1.0, max(0.0, part)) * (self.last - self.first)

    def hours(self) -> Iterator[tuple[datetime, float]]:
        """Each full hour of the axis by the zone's clock, and where it lies."""
        hour = self.begins.replace(minute=0, second=0, microsecond=0).astimezone(UTC)
        if hour < self.begins:
            hour += timedelta(hours=1)
        while hour <= self.ends:
            yield hour.astimezone(self.begins.tzinfo), self.at(hour)
            hour += timedelta(hours=1)
