"""Quantities and money as whole hundredths, in which sums are exact and quick."""

from decimal import Decimal

CENT = Decimal("0.01")


def in_hundredths(amount: Decimal) -> int:
    """12.34 -> 1234. ValueError where there are more than two places."""
    scaled = amount * 100
    whole = int(scaled)
    if whole != scaled:
        raise ValueError(f"{amount} has more than two places")
    return whole


def from_hundredths(count: int) -> Decimal:
    """1234 -> 12.34, always with two places."""
    return Decimal(count).scaleb(-2)


def exact_sum(total: Decimal | None) -> Decimal:
    """What a database summed up: SQLite adds decimals as floats, off by far less than half a hundredth. None is 0."""
    return Decimal(0) if total is None else total.quantize(CENT)
