"""What stands on a draft list: the cows to bring, in order of need, and how to get ready."""

from dataclasses import dataclass
from datetime import date, datetime

from trimops.paper.letterhead import Letterhead


@dataclass(frozen=True)
class DraftCow:
    """A cow to bring and why; `warning` is printed bold ("calves in 20 days: ask the vet first")."""

    number: str
    why: str
    warning: str = ""


@dataclass(frozen=True)
class StruckCow:
    """A cow that somebody took off the list, why, and who."""

    number: str
    why: str
    by: str


@dataclass(frozen=True)
class DraftGroup:
    """Cows of one need, in order: "Lame now", "Blocks and re-checks", "Before drying off"."""

    need: str
    cows: tuple[DraftCow, ...]


@dataclass(frozen=True)
class DraftList:
    """The whole list. Instants are aware and in the business's zone; `arrive` is None without an hour yet.

    `likely` are the earliest and latest of four arrivals in five, where they are known. Of those left for next time
    the first are told, `left_count` are all of them.
    """

    letterhead: Letterhead
    farm_name: str
    day: date
    arrive: datetime | None
    made_at: datetime
    groups: tuple[DraftGroup, ...]
    left_for_next: tuple[DraftCow, ...] = ()
    left_count: int = 0
    struck: tuple[StruckCow, ...] = ()
    prepare: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    trimmer: str = ""
    rule_note: str = ""
    time_note: str = ""
    likely: tuple[datetime, datetime] | None = None

    @property
    def count(self) -> int:
        """How many cows to bring."""
        return sum(len(group.cows) for group in self.groups)
