"""The same stuff by weight and by volume."""

from decimal import ROUND_HALF_UP, Decimal

from visits.domain.kit.stock_kinds import Unit

_HUNDREDTH = Decimal("0.01")


def in_unit(quantity: Decimal, typed: Unit, counted: Unit, grams_per_ml: Decimal | None) -> Decimal | None:
    """`quantity` of `typed` in the unit that the stuff is `counted` in, to 0.01.

    Grams are millilitres times `grams_per_ml`. None where there is no way from one to the other: pieces and pairs
    have no weight here, and without a density grams stay grams.
    """
    if typed is counted:
        return quantity.quantize(_HUNDREDTH, ROUND_HALF_UP)
    if {typed, counted} != {Unit.ML, Unit.GRAM} or not grams_per_ml:
        return None
    exact = quantity * grams_per_ml if counted is Unit.GRAM else quantity / grams_per_ml
    return exact.quantize(_HUNDREDTH, ROUND_HALF_UP)
