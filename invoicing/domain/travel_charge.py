"""What travel is charged at: by distance, by band, or shared among the farms of the round."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from trimops.kernel.money import round_money

KM_IN_A_MILE = Decimal("1.609344")
"""Exact: the international mile of 1959 (common knowledge, from memory)."""


class DistanceUnit(StrEnum):
    """Units of UN/ECE Recommendation 20."""

    KILOMETRE = "KMT"
    MILE = "SMI"

    @property
    def label(self) -> str:
        return "kilometre" if self is DistanceUnit.KILOMETRE else "mile"

    @property
    def short(self) -> str:
        return "km" if self is DistanceUnit.KILOMETRE else "miles"


class TravelRule(StrEnum):
    """How a visit is charged for the road."""

    NONE = "none"
    DISTANCE = "distance"
    BAND = "band"
    SHARED = "shared"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    TravelRule.NONE: "Not charged",
    TravelRule.DISTANCE: "By distance from the base and back",
    TravelRule.BAND: "By band of distance from the base",
    TravelRule.SHARED: "The day's round, shared among its farms",
}


@dataclass(frozen=True)
class Band:
    """Travel up to that distance from the base, one way; None: beyond all others."""

    up_to: Decimal | None
    price: Decimal


@dataclass(frozen=True)
class TravelTerms:
    """How a price list charges for the road."""

    rule: TravelRule = TravelRule.NONE
    unit: DistanceUnit = DistanceUnit.KILOMETRE
    bands: tuple[Band, ...] = ()


@dataclass(frozen=True)
class Travelled:
    """Kilometres of one visit: from the base to the farm, and there and back again.

    For a shared round also the whole round, and of each of its stops the own way there and back; `place` is which of
    them this visit is. `source` says in words where the distances come from.
    """

    one_way_km: Decimal
    there_and_back_km: Decimal
    source: str
    round_km: Decimal = Decimal(0)
    ways_km: tuple[Decimal, ...] = ()
    place: int = 0


def in_unit(km: Decimal, unit: DistanceUnit) -> Decimal:
    """Kilometres in the unit that is charged, to a tenth."""
    return round_money(km if unit is DistanceUnit.KILOMETRE else km / KM_IN_A_MILE, 1)


def band_of(distance: Decimal, bands: Sequence[Band]) -> Band | None:
    """The nearest band that reaches so far, its edge within it; None when none does."""
    closed = sorted((band for band in bands if band.up_to is not None), key=lambda band: band.up_to or 0)
    inside = next((band for band in closed if band.up_to is not None and distance <= band.up_to), None)
    return inside or next((band for band in bands if band.up_to is None), None)


def shares_of_round(cost: Decimal, ways: Sequence[Decimal], digits: int = 2) -> list[Decimal]:
    """`cost` shared in proportion to each farm's own way, to the minor unit, in the order of the round.

    Each share is the running sum rounded, less what the farms before it pay: so no share is negative, the last takes
    what rounding left over, and all together are `cost` exactly. Ways that are all nought share alike.
    """
    weights = list(ways) if sum(ways) else [Decimal(1)] * len(ways)
    whole, running, given, shares = sum(weights, Decimal(0)), Decimal(0), Decimal(0), []
    for weight in weights:
        running += weight
        until_here = round_money(cost * running / whole, digits)
        shares.append(until_here - given)
        given = until_here
    return shares
