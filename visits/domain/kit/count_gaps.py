"""What is lacking so that counts stay true."""

from collections.abc import Iterable
from decimal import Decimal


def count_gaps(counted: Iterable[tuple[Decimal, Decimal]]) -> list[Decimal]:
    """What must be added at the moment of each count of one consumable at one place, the counts in the order of time.

    Each is told as (counted, balance of then by the ledger). What is added at one is there at all that follow.
    """
    gaps, added = [], Decimal(0)
    for said, balance in counted:
        gap = said - balance - added
        added += gap
        gaps.append(gap)
    return gaps
