"""What is to be priced: the pieces of a visit put together by item, free ones apart."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from invoicing.domain.guarantee import is_under_guarantee
from invoicing.domain.pricing import PriceItem
from invoicing.domain.visit_work import VisitWork, WorkPiece
from trimops.paper.days import day_short_year

LONGEST_WHY = 200
"""Characters of `InvoiceLine.why`."""


@dataclass(frozen=True)
class Charge:
    """So many of one item, why, and the keys of the work. `amount` is a price found elsewhere than in the list."""

    work: VisitWork
    item: PriceItem
    why: str
    keys: tuple[str, ...]
    quantity: Decimal = Decimal(1)
    is_free: bool = False
    amount: Decimal | None = None


def piece_charges(work: VisitWork, guarantee_days: int) -> list[Charge]:
    """Pieces by item in the order of the price list; those under guarantee are charges of their own.

    What was put on the feet of a cow that had a full trim is charged like her trim: that was no re-check.
    """
    full = {piece.trim_id for piece in work.pieces if piece.had_full_trim}
    groups: dict[tuple[PriceItem, bool], list[WorkPiece]] = {}
    for piece in work.pieces:
        free = piece.trim_id not in full and is_under_guarantee(piece, work.day, guarantee_days)
        groups.setdefault((piece.item, free), []).append(piece)
    order = tuple(PriceItem)
    return [
        Charge(
            work,
            item,
            _guarantee_words(pieces, guarantee_days) if free else _why(item, pieces),
            tuple(piece.key for piece in pieces),
            Decimal(len(pieces)),
            free,
        )
        for (item, free), pieces in sorted(
            groups.items(), key=lambda group: (order.index(group[0][0]), group[0][1])
        )
    ]


def _why(item: PriceItem, pieces: Sequence[WorkPiece]) -> str:
    return "one visit" if item is PriceItem.CALL_OUT else cows_in_words(pieces)


def _guarantee_words(pieces: Sequence[WorkPiece], days: int) -> str:
    trimmed = {piece.rechecks_trim_on for piece in pieces if piece.rechecks_trim_on}
    since = " and ".join(day_short_year(day) for day in sorted(trimmed)) if len(trimmed) < 3 else "lately"
    return shortened(f"free within {days} days, trimmed {since}: {cows_in_words(pieces)}")


def cows_in_words(pieces: Sequence[WorkPiece], room: int = LONGEST_WHY) -> str:
    """`3 noted at the crush: 101, 102 LH, 115`; those that find no room are counted: `… and 12 more`."""
    names = list(
        dict.fromkeys(f"{piece.cow_words.removeprefix('cow ')} {piece.foot}".strip() for piece in pieces)
    )
    start = f"{len(pieces)} noted at the crush"
    names = [name for name in names if name]
    if not names:
        return start
    for shown in range(len(names), 0, -1):
        rest = len(names) - shown
        words = f"{start}: {', '.join(names[:shown])}" + (f" and {rest} more" if rest else "")
        if len(words) <= room:
            return words
    return start


def shortened(words: str, room: int = LONGEST_WHY) -> str:
    """At most `room` characters, with three dots where something was left off."""
    return words if len(words) <= room else f"{words[: room - 1]}…"
