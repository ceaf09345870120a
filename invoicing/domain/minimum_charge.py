"""A visit is not charged less than the minimum."""

from collections.abc import Iterable
from decimal import Decimal


def missing_to_minimum(minimum: Decimal, nets: Iterable[Decimal]) -> Decimal:
    """What fills a visit's lines (each without tax, after its discount) up to the minimum; 0 when they reach it.

    Lines that come to nothing are not filled up: what was free stays free.
    """
    charged = sum(nets, Decimal(0))
    return max(minimum - charged, Decimal(0)) if charged > 0 else Decimal(0)
