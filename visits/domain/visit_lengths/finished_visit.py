"""What a visit was asked for, what was done on it, and how long it took."""

from dataclasses import dataclass
from datetime import date, timedelta

from visits.domain.visit_length import FarmSetup

SHORTEST, LONGEST = 5.0, 16 * 60.0
"""Minutes. Outside of these nobody finished a visit: a key was pressed late or by mistake."""
YEARS_BACK = 3
MOST_VISITS = 1500


@dataclass(frozen=True)
class Asked:
    """What is known before a visit: where, with which van, how many cows and how many of them lame or re-checked."""

    farm: int
    van: int | None
    setup: FarmSetup
    head_count: int
    corrective_count: int


@dataclass(frozen=True)
class Work:
    """Cows by what was done to them, and blocks put on. Expected numbers may be broken."""

    functional: float
    corrective: float
    check: float
    blocks: float

    @property
    def cows(self) -> float:
        return self.functional + self.corrective + self.check


@dataclass(frozen=True)
class FinishedVisit:
    """A visit of the history, on its local day, in true minutes from start to finish."""

    asked: Asked
    day: date
    minutes: float
    work: Work


def usable(visits: list[FinishedVisit]) -> list[FinishedVisit]:
    """Those that can teach something, oldest first: the newest `MOST_VISITS` of `YEARS_BACK` years."""
    kept = sorted(
        (visit for visit in visits if SHORTEST <= visit.minutes <= LONGEST and visit.work.cows > 0),
        key=lambda visit: (visit.day, visit.asked.farm, visit.minutes, visit.asked.head_count),
    )
    if not kept:
        return []
    first = kept[-1].day - timedelta(days=round(YEARS_BACK * 365.25))
    return [visit for visit in kept if visit.day >= first][-MOST_VISITS:]
