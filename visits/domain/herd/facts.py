"""What is known of a herd's feet over the years, as plain values: the one input of every herd figure.

Days are dates in the business's zone. A lesion here is an observation at the trim, never a diagnosis.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta

from visits.domain.actions import BlockKind
from visits.domain.feet import Claw, Foot, ZoneMap
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason

DAYS_PER_YEAR = 365.25


@dataclass(frozen=True)
class Calved:
    """A calving; `lactation` is the number of the lactation it began, None when not told."""

    day: date
    lactation: int | None = None


@dataclass(frozen=True)
class CowLife:
    """A cow's time in the herd, as far as it is known.

    `first_day` is the first day on which she is known to be in the herd as an adult (first calving told, first trim,
    or the day she was put on the list, whichever is earliest); `left_on` is None while she is there. `calvings` are
    in order of days.
    """

    cow: int
    number: str
    first_day: date
    left_on: date | None = None
    born_on: date | None = None
    calvings: tuple[Calved, ...] = ()

    def is_there(self, day: date) -> bool:
        return self.first_day <= day and (self.left_on is None or day < self.left_on)

    def days_between(self, start: date, end: date) -> int:
        """Days of hers in the herd from `start` on and before `end`."""
        first = max(self.first_day, start)
        last = end if self.left_on is None else min(end, self.left_on)
        return max(0, (last - first).days)

    def calving_before(self, day: date) -> Calved | None:
        """The calving that began the lactation she was in on `day`; None before the first that is known."""
        return next((calved for calved in reversed(self.calvings) if calved.day <= day), None)


@dataclass(frozen=True)
class LesionSeen:
    """One lesion on one claw (or on the skin). `zone` is None when the place was not noted."""

    lesion: LesionCode
    claw: Claw
    zone: int | None = None
    severity: int = 1
    dd_stage: DDStage | None = None
    zone_map: ZoneMap = ZoneMap.ILC


@dataclass(frozen=True)
class FootSeen:
    """One lifted foot. `treated` is true when more than a plain trim or taking a block off was done to it."""

    foot: Foot
    lesions: tuple[LesionSeen, ...] = ()
    treated: bool = False


@dataclass(frozen=True)
class CowSeen:
    """One cow at the crush on one day, with the feet that were lifted. `is_lame` None: her walk was not scored."""

    cow: int
    day: date
    visit: int
    reason: VisitReason
    feet: tuple[FootSeen, ...] = ()
    is_lame: bool | None = None


@dataclass(frozen=True)
class BlockOn:
    """A block from the day it was put on to the day it came off (None: still on, or lost from sight)."""

    cow: int
    foot: Foot
    claw: Claw
    kind: BlockKind
    put_on: date
    off_due: date
    off_on: date | None = None


@dataclass(frozen=True)
class RecheckTold:
    """A re-check that was booked. `looked_on` is the day the foot was looked at; `closed_on` may be without a look."""

    cow: int
    foot: Foot
    booked_on: date
    due_from: date
    due_until: date
    looked_on: date | None = None
    closed_on: date | None = None
    why_closed: str = ""


@dataclass(frozen=True)
class HerdScored:
    """One round of mobility scoring. Only a `whole_herd` round says anything of the herd."""

    day: date
    scale: MobilityScale
    scores: tuple[int, ...]
    whole_herd: bool = False


@dataclass(frozen=True)
class HerdFacts:
    """All of one herd, up to and with `today`. `seen` is in order of days. `herd_size` is as the farm tells it."""

    today: date
    cows: tuple[CowLife, ...]
    seen: tuple[CowSeen, ...]
    blocks: tuple[BlockOn, ...] = ()
    rechecks: tuple[RecheckTold, ...] = ()
    scorings: tuple[HerdScored, ...] = ()
    herd_size: int = 0
    country: str = "GB"
    by_cow: dict[int, CowLife] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "by_cow", {life.cow: life for life in self.cows})

    @property
    def first_day(self) -> date | None:
        """The first day on which any cow was seen at the crush."""
        return self.seen[0].day if self.seen else None

    def herd_on(self, day: date) -> int:
        """How many cows are known to have been in the herd on that day."""
        return sum(life.is_there(day) for life in self.cows)

    def cow_years(self, start: date, end: date) -> float:
        """Cow-years in the herd from `start` on and before `end` (365.25 days to a year)."""
        return sum(life.days_between(start, end) for life in self.cows) / DAYS_PER_YEAR

    def seen_between(self, start: date, end: date) -> Iterator[CowSeen]:
        """Cows seen from `start` on and before `end`."""
        return (seen for seen in self.seen if start <= seen.day < end)

    @property
    def days_of_work(self) -> tuple[date, ...]:
        """The days on which cows were seen, each once, in order."""
        return tuple(dict.fromkeys(seen.day for seen in self.seen))


def a_year_before(day: date) -> date:
    """The same day of the year before; 28 February for 29 February."""
    try:
        return day.replace(year=day.year - 1)
    except ValueError:
        return day - timedelta(days=366)
