"""What a phone sends from the crush: writings, each one version of one thing, never changed once made.

A writing is put down on a phone with an id of its own (UUIDv7). What it is a version of is its `record`; the writing
that was on the screen when it was made is its `after`.
"""

from enum import StrEnum


class WritingKind(StrEnum):
    """What a writing is a version of."""

    COW = "cow"
    WASH = "wash"
    KIT = "kit"
    BLADE = "blade"
    SIGN_OFF = "sign_off"

    @property
    def label(self) -> str:
        return {
            WritingKind.COW: "Cow",
            WritingKind.WASH: "Wash-down",
            WritingKind.KIT: "Kit used",
            WritingKind.BLADE: "Blades in hand",
            WritingKind.SIGN_OFF: "Sign-off",
        }[self]
