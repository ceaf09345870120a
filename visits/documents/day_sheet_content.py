"""What stands on a van's sheet for one day: where, when, whom to ring, what to mind, what to load."""

from dataclasses import dataclass
from datetime import date, datetime

from trimops.paper.colours import Meaning
from trimops.paper.days import day_long
from trimops.paper.figures import counted
from trimops.paper.letterhead import Letterhead


@dataclass(frozen=True)
class SheetStop:
    """One farm. Instants are aware and in the business's zone; `ring` is a number with a name, "" if none is known."""

    start: datetime
    finish: datetime
    farm: str
    cows: int
    drive_minutes: int
    drive_km: float
    hygiene: str
    meaning: Meaning = Meaning.PLANNED
    lame: int = 0
    ring: str = ""
    way_in: str = ""
    note: str = ""
    mark: str = ""


@dataclass(frozen=True)
class SheetMeal:
    """When the meal is."""

    start: datetime
    finish: datetime


@dataclass(frozen=True)
class DaySheet:
    """One van's day. `load` are things to have in the van, with the farms they are for."""

    letterhead: Letterhead
    day: date
    van: str
    leave: datetime
    back: datetime
    km: float
    stops: tuple[SheetStop, ...]
    made_at: datetime
    meal: SheetMeal | None = None
    load: tuple[str, ...] = ()
    is_proposed: bool = False

    @property
    def title(self) -> str:
        """ "Tuesday 1 December 2026: 4 farms, 63 cows" """
        farms = len({stop.farm for stop in self.stops})
        cows = sum(stop.cows for stop in self.stops)
        return f"{day_long(self.day)}: {counted(farms, 'farm')}, {counted(cows, 'cow')}"
