"""The kinds of stock, how it is counted, and how it comes and goes."""

from enum import StrEnum


class ConsumableKind(StrEnum):
    """What is used up at the crush."""

    BLOCK = "block"
    GLUE = "glue"
    WRAP = "wrap"
    DRESSING = "dressing"
    GLOVES = "gloves"
    DISC = "disc"
    DISINFECTANT = "disinfectant"
    OTHER = "other"

    @property
    def label(self) -> str:
        return _CONSUMABLE_LABELS[self]


class Unit(StrEnum):
    """What a consumable is counted in."""

    EACH = "each"
    PAIR = "pair"
    ML = "ml"
    GRAM = "g"

    @property
    def label(self) -> str:
        return _UNIT_LABELS[self]

    @property
    def is_whole(self) -> bool:
        """Whether it is carried and ordered in whole pieces (a share of one may still be used per cow)."""
        return self in (Unit.EACH, Unit.PAIR)


class UsePer(StrEnum):
    """What of a day's work uses a consumable up."""

    BLOCK = "block"
    WRAP = "wrap"
    DRESSING = "dressing"
    FOOT = "foot"
    COW = "cow"
    VISIT = "visit"

    @property
    def label(self) -> str:
        return _USE_LABELS[self]


class MovementKind(StrEnum):
    """Why a line of the stock ledger was written."""

    BOUGHT = "bought"
    MOVED = "moved"
    USED = "used"
    COUNTED = "counted"
    WRITTEN_OFF = "written_off"

    @property
    def label(self) -> str:
        return _MOVEMENT_LABELS[self]


class UseOf(StrEnum):
    """Where a use was learned from."""

    COW = "cow"
    VISIT = "visit"
    WASH = "wash"
    BY_HAND = "by_hand"

    @property
    def label(self) -> str:
        return _USE_OF_LABELS[self]


class WriteOffReason(StrEnum):
    """Why stock was thrown away."""

    EXPIRED = "expired"
    BROKEN = "broken"
    LOST = "lost"
    GIVEN = "given"
    OTHER = "other"

    @property
    def label(self) -> str:
        return _WRITE_OFF_LABELS[self]


_CONSUMABLE_LABELS = {
    ConsumableKind.BLOCK: "Blocks",
    ConsumableKind.GLUE: "Glue",
    ConsumableKind.WRAP: "Wraps",
    ConsumableKind.DRESSING: "Dressings",
    ConsumableKind.GLOVES: "Gloves",
    ConsumableKind.DISC: "Discs",
    ConsumableKind.DISINFECTANT: "Disinfectant",
    ConsumableKind.OTHER: "Other",
}
_UNIT_LABELS = {Unit.EACH: "each", Unit.PAIR: "pair", Unit.ML: "ml", Unit.GRAM: "g"}
_USE_LABELS = {
    UsePer.BLOCK: "block put on",
    UsePer.WRAP: "foot wrapped",
    UsePer.DRESSING: "dressing",
    UsePer.FOOT: "foot lifted",
    UsePer.COW: "cow",
    UsePer.VISIT: "visit",
}
_MOVEMENT_LABELS = {
    MovementKind.BOUGHT: "Bought",
    MovementKind.MOVED: "Moved",
    MovementKind.USED: "Used",
    MovementKind.COUNTED: "Counted",
    MovementKind.WRITTEN_OFF: "Written off",
}
_USE_OF_LABELS = {
    UseOf.COW: "counted from a cow",
    UseOf.VISIT: "counted from a visit",
    UseOf.WASH: "mixed for a wash-down",
    UseOf.BY_HAND: "corrected by hand",
}
_WRITE_OFF_LABELS = {
    WriteOffReason.EXPIRED: "Past its date",
    WriteOffReason.BROKEN: "Broken or spoilt",
    WriteOffReason.LOST: "Lost",
    WriteOffReason.GIVEN: "Given away",
    WriteOffReason.OTHER: "Other",
}
