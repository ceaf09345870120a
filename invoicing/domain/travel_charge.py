"""What travel is charged at: by distance, by band, or shared among the farms of the round."""

from enum import StrEnum


class DistanceUnit(StrEnum):
    """Units of UN/ECE Recommendation 20."""

    KILOMETRE = "KMT"
    MILE = "SMI"

    @property
    def label(self) -> str:
        return "kilometre" if self is DistanceUnit.KILOMETRE else "mile"


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
