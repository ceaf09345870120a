"""Which work is free because it looks again at a foot that was trimmed a short while ago."""

from datetime import date

from invoicing.domain.pricing import PriceItem
from invoicing.domain.visit_work import WorkPiece

NEVER_FREE = frozenset({PriceItem.CALL_OUT})


def is_under_guarantee(piece: WorkPiece, day: date, guarantee_days: int) -> bool:
    """True within so many days of our trim of that foot, the last one counting; 0 days: never.

    A cow that had a full trim on this visit was not only looked at again: her trim is charged.
    """
    before = piece.rechecks_trim_on
    if before is None or piece.had_full_trim or piece.item in NEVER_FREE or not guarantee_days:
        return False
    return 0 <= (day - before).days <= guarantee_days
