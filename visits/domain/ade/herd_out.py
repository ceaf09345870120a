"""What of a herd goes out, as plain values. Instants are aware; days are the farm's own days."""

from dataclasses import dataclass
from datetime import date, datetime

from farms.domain.cow_status import CowStatus
from visits.domain.crush_entry import CowEntry
from visits.domain.mobility import MobilityScale


@dataclass(frozen=True)
class FarmOut:
    """The farm; `key` is the number we know it by."""

    key: int
    name: str


@dataclass(frozen=True)
class CalvingOut:
    """One calving of a cow; `lactation` is None when its number was not told."""

    key: int
    day: date
    lactation: int | None = None


@dataclass(frozen=True)
class CowOut:
    """A cow by all that she is known by; empty text where she has no such mark."""

    key: int
    number: str
    status: CowStatus
    tag: str = ""
    electronic_id: str = ""
    born_on: date | None = None
    calvings: tuple[CalvingOut, ...] = ()


@dataclass(frozen=True)
class TrimOut:
    """A cow at the crush: when, and what was noted. `uid` is the id it was made with."""

    key: int
    uid: str
    cow: int
    at: datetime
    entry: CowEntry


@dataclass(frozen=True)
class ScoreOut:
    """A mobility score of a round behind the herd. A score noted at the crush is in its trim's entry."""

    key: int
    cow: int
    day: date
    noted_at: datetime
    scale: MobilityScale
    score: int


@dataclass(frozen=True)
class HerdOut:
    """All of it; `trims` and `scores` in order of time. Every cow that they name is in `cows`."""

    farm: FarmOut
    cows: tuple[CowOut, ...]
    trims: tuple[TrimOut, ...] = ()
    scores: tuple[ScoreOut, ...] = ()
