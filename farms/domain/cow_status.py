"""Where a cow is in her life on the farm."""

from enum import StrEnum


class CowStatus(StrEnum):
    """Status as the farm's own list gives it."""

    MILKING = "milking"
    DRY = "dry"
    HEIFER = "heifer"
    BULL = "bull"
    SOLD = "sold"
    DEAD = "dead"

    @property
    def label(self) -> str:
        return _LABELS[self]

    @property
    def is_on_farm(self) -> bool:
        """Whether she can still come to the crush."""
        return self not in (CowStatus.SOLD, CowStatus.DEAD)


_LABELS = {
    CowStatus.MILKING: "Milking",
    CowStatus.DRY: "Dry",
    CowStatus.HEIFER: "Heifer",
    CowStatus.BULL: "Bull",
    CowStatus.SOLD: "Sold",
    CowStatus.DEAD: "Dead",
}
