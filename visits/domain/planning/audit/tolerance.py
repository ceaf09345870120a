"""How far a printed figure may lie from the recomputed one, and how differences are put into words."""

from fractions import Fraction

from visits.domain.planning.audit.values import MINUTE

TENTH = 100_000
"""A tenth of a second, in microseconds: the grain of the contract's durations and instants."""

METRE = 1
"""The grain of the contract's distances."""

PENNY_PART = Fraction(1, 100)
"""A hundredth of the minor unit: room for decimals printed from exact sums, too little for a wrong figure."""


def same_time(one: int, other: int) -> bool:
    return abs(one - other) <= TENTH


def same_distance(one: Fraction | int, other: Fraction | int) -> bool:
    return abs(Fraction(one) - other) <= METRE


def same_money(told: Fraction, real: Fraction) -> bool:
    return abs(told - real) <= money_grain(real)


def money_grain(real: Fraction) -> Fraction:
    """A hundredth, and beyond a million million what a double-precision JSON number cannot tell."""
    return PENNY_PART + abs(real) / 10**14


def mins(duration: int) -> str:
    """A duration in minutes, or in seconds when it is below one."""
    if abs(duration) < MINUTE:
        return f"{_short(Fraction(duration, 1_000_000))} s"
    return f"{_short(Fraction(duration, MINUTE))} min"


def kms(metres: Fraction | int) -> str:
    return f"{_short(Fraction(metres) / 1000)} km"


def money(amount: Fraction) -> str:
    return _short(amount)


def _short(number: Fraction) -> str:
    text = f"{round(number * 1000)}"
    sign, digits = ("-", text[1:]) if text.startswith("-") else ("", text)
    digits = digits.rjust(4, "0")
    return (sign + digits[:-3] + "." + digits[-3:]).rstrip("0").rstrip(".")
