"""What the generator hands over: plain values, no rows. Farms, cows and vans are numbered from 0."""

from dataclasses import dataclass, field
from datetime import date, datetime

from visits.domain.actions import BlockKind
from visits.domain.crush_entry import CowEntry
from visits.domain.feet import Claw, Foot
from visits.domain.recheck_due import RecheckDue
from visits.domain.visit_states import VisitReason

SeenKey = tuple[int, int]
"""(number of the visit, number of the cow)."""

CowKey = tuple[int, int]
"""(number of the farm, number of the cow)."""


@dataclass(frozen=True)
class CowSeen:
    """One cow at the crush, so many minutes after the visit began."""

    cow: int
    entry: CowEntry
    minute: float


@dataclass(frozen=True)
class PastVisit:
    """A visit that was made, or (without cows) one that is confirmed for a day still to come.

    It was planned for `planned` and really began at `start`.
    """

    farm: int
    van: int
    reason: VisitReason
    due_from: date
    due_until: date
    planned: datetime
    start: datetime
    expected_minutes: int
    minutes: float
    head_count: int
    corrective_count: int
    cows: tuple[CowSeen, ...]
    asked: tuple[tuple[int, str], ...]
    is_done: bool = True
    is_called_off: bool = False


@dataclass
class RecheckSpell:
    """A foot that had to be looked at again, from one look to the next."""

    farm: int
    cow: int
    due: RecheckDue
    opened_by: SeenKey
    closed_by: SeenKey | None = None
    closed_on: date | None = None
    closed_because: str = ""


@dataclass
class BlockSpell:
    """A block on a claw, from the cow that it was put on at to the one that took it off."""

    farm: int
    cow: int
    foot: Foot
    claw: Claw
    kind: BlockKind
    put_on: date
    off_due: date
    put_on_by: SeenKey
    off_on: date | None = None
    off_by: SeenKey | None = None


@dataclass
class Past:
    """The whole history, oldest visit first. `herds` counts each farm's cows, those that left included."""

    visits: list[PastVisit] = field(default_factory=list)
    rechecks: list[RecheckSpell] = field(default_factory=list)
    blocks: list[BlockSpell] = field(default_factory=list)
    herds: list[int] = field(default_factory=list)
    came: dict[CowKey, date] = field(default_factory=dict)
    left: dict[CowKey, date] = field(default_factory=dict)
