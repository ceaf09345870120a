"""How a fault of a blade was put right, and which faults can be.

A cracked blade is never mended, a chipped disc never ground: both are replaced (chipped discs: Head Face Med 2008;4:1;
the crack: common practice, no source). Whoever says that something was put right has looked at it.
"""

from enum import StrEnum

from visits.domain.kit.blade_kinds import BladeFault, BladeKind


class PutRight(StrEnum):
    """What was done about it."""

    GROUND_OUT = "ground_out"
    MENDED = "mended"
    REPLACED = "replaced"

    @property
    def label(self) -> str:
        return _LABELS[self]


def ways_to_put_right(kind: BladeKind, fault: BladeFault) -> tuple[PutRight, ...]:
    """What may be done about a fault of such a blade, before it is taken in hand again."""
    if fault is BladeFault.CHIPPED and not kind.is_turned:
        return (PutRight.GROUND_OUT, PutRight.REPLACED)
    if fault in (BladeFault.BENT, BladeFault.HANDLE):
        return (PutRight.MENDED, PutRight.REPLACED)
    return (PutRight.REPLACED,)


_LABELS = {
    PutRight.GROUND_OUT: "The chip is ground out",
    PutRight.MENDED: "Set right, and it sits fast",
    PutRight.REPLACED: "A new one is in its place",
}
