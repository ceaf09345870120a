"""The kinds of blades, where each stands in its life, and how edges begin and end."""

from enum import StrEnum


class BladeKind(StrEnum):
    """What cuts: knives, and what a grinder turns."""

    HOOF_KNIFE = "hoof_knife"
    DOUBLE_EDGED = "double_edged"
    LOOP_KNIFE = "loop_knife"
    GRINDER_DISC = "grinder_disc"
    OTHER = "other"

    @property
    def label(self) -> str:
        return _BLADE_LABELS[self]

    @property
    def is_turned(self) -> bool:
        """Whether a grinder turns it: then it is watched by hours and cracks."""
        return self is BladeKind.GRINDER_DISC


class Hand(StrEnum):
    """Which hand a knife is bent for."""

    RIGHT = "right"
    LEFT = "left"
    EITHER = "either"

    @property
    def label(self) -> str:
        return {Hand.RIGHT: "Right hand", Hand.LEFT: "Left hand", Hand.EITHER: "Either hand"}[self]


class BladeState(StrEnum):
    """Where a blade stands in its life."""

    BOUGHT = "bought"
    IN_USE = "in_use"
    AT_GRINDING = "at_grinding"
    OUT_OF_USE = "out_of_use"
    RETIRED = "retired"

    @property
    def label(self) -> str:
        return _STATE_LABELS[self]

    @property
    def may_cut(self) -> bool:
        """Whether it may be taken in hand."""
        return self in (BladeState.BOUGHT, BladeState.IN_USE)


class BladeFault(StrEnum):
    """Why a blade was taken out of use."""

    CRACKED = "cracked"
    CHIPPED = "chipped"
    BENT = "bent"
    HANDLE = "handle"
    WORN = "worn"
    LOST = "lost"

    @property
    def label(self) -> str:
        return _FAULT_LABELS[self]

    @property
    def is_danger(self) -> bool:
        """Whether it may hurt somebody: out of use at once, with a caution."""
        return self in (BladeFault.CRACKED, BladeFault.CHIPPED, BladeFault.BENT, BladeFault.HANDLE)


class TurnPart(StrEnum):
    """What was said of a blade when the trimmer turned to another, or at the end of the day."""

    IN_HAND = "in_hand"
    WENT_DULL = "went_dull"
    CRACKED = "cracked"
    CHIPPED = "chipped"

    @property
    def label(self) -> str:
        return _PART_LABELS[self]

    @property
    def is_out(self) -> bool:
        """Whether it takes the blade out of use at once."""
        return self in (TurnPart.CRACKED, TurnPart.CHIPPED)


class EdgeBefore(StrEnum):
    """How the edge was when it was taken to be sharpened."""

    DULL = "dull"
    STILL_CUT = "still_cut"
    CHIPPED = "chipped"
    NOT_SAID = "not_said"

    @property
    def label(self) -> str:
        return _BEFORE_LABELS[self]


class SharpenMethod(StrEnum):
    """How an edge was made again."""

    STONE = "stone"
    FILE = "file"
    BELT = "belt"
    WHEEL = "wheel"
    STROP = "strop"
    SENT_AWAY = "sent_away"

    @property
    def label(self) -> str:
        return _METHOD_LABELS[self]


class EdgeFelt(StrEnum):
    """How the edge felt after sharpening, by the one who uses it."""

    VERY_SHARP = "very_sharp"
    SHARP = "sharp"
    FAIR = "fair"
    POOR = "poor"

    @property
    def label(self) -> str:
        return _FELT_LABELS[self]


_BLADE_LABELS = {
    BladeKind.HOOF_KNIFE: "Hoof knife",
    BladeKind.DOUBLE_EDGED: "Double-edged knife",
    BladeKind.LOOP_KNIFE: "Loop knife",
    BladeKind.GRINDER_DISC: "Grinder disc",
    BladeKind.OTHER: "Other blade",
}
_STATE_LABELS = {
    BladeState.BOUGHT: "New, not used yet",
    BladeState.IN_USE: "In use",
    BladeState.AT_GRINDING: "At grinding",
    BladeState.OUT_OF_USE: "Out of use",
    BladeState.RETIRED: "Retired",
}
_FAULT_LABELS = {
    BladeFault.CRACKED: "Cracked",
    BladeFault.CHIPPED: "Chipped",
    BladeFault.BENT: "Bent",
    BladeFault.HANDLE: "Handle loose",
    BladeFault.WORN: "Worn away",
    BladeFault.LOST: "Lost",
}
_PART_LABELS = {
    TurnPart.IN_HAND: "in hand",
    TurnPart.WENT_DULL: "went dull",
    TurnPart.CRACKED: "cracked",
    TurnPart.CHIPPED: "chipped",
}
_BEFORE_LABELS = {
    EdgeBefore.DULL: "Dull: it dragged",
    EdgeBefore.STILL_CUT: "It still cut",
    EdgeBefore.CHIPPED: "Chipped",
    EdgeBefore.NOT_SAID: "Not said",
}
_METHOD_LABELS = {
    SharpenMethod.STONE: "Stone",
    SharpenMethod.FILE: "File",
    SharpenMethod.BELT: "Belt",
    SharpenMethod.WHEEL: "Wheel",
    SharpenMethod.STROP: "Strop",
    SharpenMethod.SENT_AWAY: "Sent away",
}
_FELT_LABELS = {
    EdgeFelt.VERY_SHARP: "Very sharp",
    EdgeFelt.SHARP: "Sharp",
    EdgeFelt.FAIR: "Fair",
    EdgeFelt.POOR: "Poor",
}
