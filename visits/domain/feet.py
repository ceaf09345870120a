"""Feet, claws and the numbered places of a claw.

Foot and claw names follow the usual trade words (trade-facts 1.7). Zones are the numbers 0 to 12 of the claw
map drawn up by the International Lameness Committee (Kuopio 2008); the names of the places below are our own
wording, and the split of 7/8 and 11/12 is from memory. Another map in print (Vermunt & Greenough 1996) uses
the same digits for other places, so every zone is kept with the map it was read on.
"""

from enum import StrEnum


class Foot(StrEnum):
    """One of four feet."""

    LEFT_FORE = "LF"
    RIGHT_FORE = "RF"
    LEFT_HIND = "LH"
    RIGHT_HIND = "RH"

    @property
    def label(self) -> str:
        """The words a trimmer says, e.g. "left hind"."""
        return _FOOT_LABELS[self]

    @property
    def is_hind(self) -> bool:
        return self in (Foot.LEFT_HIND, Foot.RIGHT_HIND)

    @property
    def opposite(self) -> "Foot":
        """The same foot on the other side of the cow."""
        return _OPPOSITE[self]


class Claw(StrEnum):
    """Outer or inner claw of a foot, or the skin between and behind them."""

    LATERAL = "lateral"
    MEDIAL = "medial"
    SKIN = "skin"

    @property
    def label(self) -> str:
        """The words a trimmer says, e.g. "outer claw"."""
        return _CLAW_LABELS[self]


class ZoneMap(StrEnum):
    """Which drawing a zone number was read on."""

    ILC = "ILC"

    @property
    def label(self) -> str:
        return "International Lameness Committee map, zones 0 to 12"


_FOOT_LABELS = {
    Foot.LEFT_FORE: "left fore",
    Foot.RIGHT_FORE: "right fore",
    Foot.LEFT_HIND: "left hind",
    Foot.RIGHT_HIND: "right hind",
}
_OPPOSITE = {
    Foot.LEFT_FORE: Foot.RIGHT_FORE,
    Foot.RIGHT_FORE: Foot.LEFT_FORE,
    Foot.LEFT_HIND: Foot.RIGHT_HIND,
    Foot.RIGHT_HIND: Foot.LEFT_HIND,
}
_CLAW_LABELS = {Claw.LATERAL: "outer claw", Claw.MEDIAL: "inner claw", Claw.SKIN: "skin"}

ZONE_NAMES: dict[int, str] = {
    0: "skin between the claws",
    1: "white line at the toe",
    2: "white line along the outside wall",
    3: "where outside wall meets heel",
    4: "where sole meets heel",
    5: "front of the sole",
    6: "heel bulb",
    7: "outside wall, side",
    8: "outside wall, front",
    9: "skin behind, above the heel",
    10: "cleft between the heels",
    11: "inside wall, front",
    12: "inside wall, back",
}
SKIN_ZONES = frozenset({0, 9, 10})
WEIGHT_BEARING_ZONES = frozenset({1, 2, 3, 4, 5, 6})

FEET_IN_ORDER: tuple[Foot, ...] = (Foot.LEFT_HIND, Foot.RIGHT_HIND, Foot.LEFT_FORE, Foot.RIGHT_FORE)


def is_zone(number: int, zone_map: ZoneMap = ZoneMap.ILC) -> bool:
    """Whether the map has a place of that number."""
    return zone_map is ZoneMap.ILC and number in ZONE_NAMES


def zone_name(number: int) -> str:
    """The place in our own words; KeyError for a number outside the map."""
    return ZONE_NAMES[number]


def reference_claw(foot: Foot) -> Claw:
    """The claw cut first, to which its partner is matched (T1): hind inner, fore outer.

    The hind outer claw is the larger and the more often diseased; on a fore foot it is the inner one.
    """
    return Claw.MEDIAL if foot.is_hind else Claw.LATERAL


def sound_partner(claw: Claw) -> Claw | None:
    """The other claw of the same foot; None for the skin, which has no partner."""
    return {Claw.LATERAL: Claw.MEDIAL, Claw.MEDIAL: Claw.LATERAL}.get(claw)


def claws_in_order(foot: Foot) -> tuple[Claw, Claw]:
    """Both claws in the order they are cut: reference claw first, then its partner (T1)."""
    first = reference_claw(foot)
    return first, Claw.LATERAL if first is Claw.MEDIAL else Claw.MEDIAL
