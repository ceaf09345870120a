"""How much dearer something has become."""

from decimal import Decimal

from trimops.kernel.money import round_money


def change_percent(before: Decimal, now: Decimal) -> Decimal | None:
    """(now - before) / before in percent to a tenth; None where it cost nothing before, so that no percent says it."""
    return round_money((now - before) * 100 / before, 1) if before else None
