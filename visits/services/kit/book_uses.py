"""What was used, as lines of the stock ledger, which is only ever added to."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal

from visits.domain.kit.stock_kinds import MovementKind, UseOf
from visits.models import StockMovement, Visit
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.settle_counts import settle_counts


@dataclass(frozen=True)
class UseAt:
    """A use is told from another by its consumable, place, moment and cow (their keys; no cow: the visit's own)."""

    consumable: int
    place: int
    at: datetime
    trim: int | None = None


@dataclass
class Booked:
    """What the ledger says of one source; the words by which each cow's use of a consumable was booked first."""

    quantities: dict[UseAt, Decimal] = field(default_factory=dict)
    words: dict[tuple[int | None, int], str] = field(default_factory=dict)


@dataclass(frozen=True)
class Booking:
    """Uses of one source of a visit are brought to `wanted`, as heard at `noted_at`. `words` stand on their lines."""

    visit: Visit
    use_of: UseOf
    wanted: Mapping[UseAt, Decimal]
    noted_at: datetime
    words: Mapping[tuple[int | None, int], str] = field(default_factory=dict)


def booked_uses(visit: Visit, use_of: UseOf, *, trims: Iterable[int] | None = None) -> Booked:
    """What stands in the ledger of that source: of these cows, or of the visit itself. One query."""
    rows = StockMovement.objects.within(visit.scope).filter(use_of=use_of)
    rows = rows.filter(visit=visit) if trims is None else rows.filter(trim_id__in=trims)
    sums: defaultdict[UseAt, Decimal] = defaultdict(Decimal)
    found = Booked()
    for row in rows.order_by("pk"):
        sums[UseAt(row.consumable_id, row.place_id, row.at, row.trim_id)] -= row.quantity
        found.words.setdefault((row.trim_id, row.consumable_id), row.note)
    found.quantities = {use: quantity for use, quantity in sums.items() if quantity}
    return found


def book_uses(*, booking: Booking, booked: Booked) -> None:
    """Write what differs, and keep every count true. Call it inside the transaction that locks the visit.

    A use that is now at another moment or place is taken back there and written here. So whatever came first, the
    lines of each moment and place come to what is known last.
    """
    lines = [
        _line(booking, use, booked.quantities.get(use, Decimal(0)) - booking.wanted.get(use, Decimal(0)))
        for use in sorted({*booking.wanted, *booked.quantities}, key=_in_order)
    ]
    rows = [line for line in lines if line.quantity]
    if not rows:
        return
    scope = booking.visit.scope
    lock_stock(scope=scope)
    StockMovement.objects.bulk_create(rows)
    settle_counts(
        scope=scope,
        touched={(row.consumable_id, row.place_id) for row in rows},
        since=min(row.at for row in rows),
        noted_at=booking.noted_at,
    )


def _in_order(use: UseAt) -> tuple[datetime, int, int, int]:
    return use.at, use.trim or 0, use.consumable, use.place


def _line(booking: Booking, use: UseAt, quantity: Decimal) -> StockMovement:
    return StockMovement(
        business_id=booking.visit.business_id,
        consumable_id=use.consumable,
        place_id=use.place,
        kind=MovementKind.USED,
        use_of=booking.use_of,
        quantity=quantity,
        at=use.at,
        trim_id=use.trim,
        visit_id=None if use.trim else booking.visit.pk,
        note=booking.words.get((use.trim, use.consumable), ""),
        noted_at=booking.noted_at,
    )
