"""What was done on one visit, piece by piece, as far as it may be charged for."""

from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from invoicing.domain.pricing import PriceItem
from visits.domain.feet import Foot

FEET = {foot.value: foot.label for foot in Foot}


@dataclass(frozen=True)
class WorkPiece:
    """One thing done. `key` names it for good, whatever a phone sends later (see `visit_key`, `trim_key`, `foot_key`).

    `rechecks_trim_on` is the day on which we last trimmed what was worked on again here: the foot of a block, wrap or
    dressing; for a cow the oldest of such days over her lifted feet, None as soon as one of them is new to us.
    `had_full_trim`: both her hind feet or all four were cut on this visit.
    """

    key: str
    item: PriceItem
    trim_id: int | None = None
    cow_words: str = ""
    foot: str = ""
    detail: str = ""
    rechecks_trim_on: date | None = None
    had_full_trim: bool = False


@dataclass(frozen=True)
class VisitWork:
    """A visit's pieces in the order they were put down; `day` is that of the finish, in the zone of the business.

    Empty `pieces`: nothing was done that could be charged. The call-out is a piece; supplements, travel and the minimum
    are not: who prices them names them by `visit_key(uid, item)`.
    """

    visit_id: int
    uid: UUID
    farm_id: int
    day: date
    started_at: datetime | None
    finished_at: datetime
    is_urgent: bool
    pieces: tuple[WorkPiece, ...] = ()


def visit_key(uid: UUID, item: PriceItem) -> str:
    """What a visit is charged for as a whole: `visit/<uid>/call_out`."""
    return f"visit/{uid}/{item.value}"


def trim_key(client_id: UUID, item: PriceItem) -> str:
    """A cow at the crush: `trim/<client id>/functional`. Another kind of trim is another piece of work."""
    return f"trim/{client_id}/{item.value}"


def foot_key(client_id: UUID, foot: str, item: PriceItem, which: str) -> str:
    """What was put on a foot: `trim/<client id>/LH/block/medial`; `which` is the claw, or a running number."""
    return f"trim/{client_id}/{foot}/{item.value}/{which}"


def piece_words(piece: WorkPiece) -> str:
    """What the office reads: "cow 101: Block, left hind, inner claw"."""
    what = ", ".join(filter(None, [piece.item.label, FEET.get(piece.foot, ""), piece.detail]))
    return f"{piece.cow_words}: {what}" if piece.cow_words else what
