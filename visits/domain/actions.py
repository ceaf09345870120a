"""What is done to a claw, and what kind of trim follows from it.

The three and five steps of a trim are the usual Dutch method (Toussaint Raven; trade-facts 3.1, 14 T4).
"""

from collections.abc import Iterable
from enum import StrEnum


class ActionKind(StrEnum):
    """One thing done to a claw or a foot."""

    LENGTH = "length"
    BALANCE = "balance"
    MODEL = "model"
    RELIEF = "relief"
    LOOSE_HORN = "loose_horn"
    BLOCK = "block"
    BLOCK_OFF = "block_off"
    WRAP = "wrap"
    DRESSING = "dressing"
    NO_CUT = "no_cut"

    @property
    def label(self) -> str:
        """The words a trimmer says, e.g. "cut to length"."""
        return _ACTION_LABELS[self]


class BlockKind(StrEnum):
    """What a lift under the sound claw is made of; each comes off in its own time (trade-facts 3.5)."""

    WOOD = "wood"
    RUBBER = "rubber"
    EVA = "eva"
    SHOE = "shoe"

    @property
    def label(self) -> str:
        return _BLOCK_LABELS[self]


class TrimKind(StrEnum):
    """What a cow had done: follows from the actions, is never chosen (T4)."""

    FUNCTIONAL = "functional"
    CORRECTIVE = "corrective"
    CHECK = "check"

    @property
    def label(self) -> str:
        return _TRIM_LABELS[self]


_ACTION_LABELS = {
    ActionKind.LENGTH: "cut to length",
    ActionKind.BALANCE: "levelled with its partner",
    ActionKind.MODEL: "modelled",
    ActionKind.RELIEF: "weight taken off",
    ActionKind.LOOSE_HORN: "loose horn off",
    ActionKind.BLOCK: "block on",
    ActionKind.BLOCK_OFF: "block off",
    ActionKind.WRAP: "wrapped",
    ActionKind.DRESSING: "dressed",
    ActionKind.NO_CUT: "no cut needed",
}
_BLOCK_LABELS = {
    BlockKind.WOOD: "wooden block",
    BlockKind.RUBBER: "rubber block",
    BlockKind.EVA: "foam block",
    BlockKind.SHOE: "shoe",
}
_TRIM_LABELS = {
    TrimKind.FUNCTIONAL: "functional trim",
    TrimKind.CORRECTIVE: "corrective trim",
    TrimKind.CHECK: "looked at",
}

FUNCTIONAL_STEPS = frozenset({ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL})
CORRECTIVE_STEPS = frozenset({ActionKind.RELIEF, ActionKind.LOOSE_HORN, ActionKind.BLOCK})


def trim_kind_of(kinds: Iterable[ActionKind]) -> TrimKind:
    """The kind of trim that these actions amount to, over one claw, one foot or a whole cow.

    Any relief, loose horn off or block makes it corrective; else any cut makes it functional; else (nothing
    cut, only a block taken off, a dressing or a wrap) the cow was looked at.
    """
    done = frozenset(kinds)
    if done & CORRECTIVE_STEPS:
        return TrimKind.CORRECTIVE
    if done & FUNCTIONAL_STEPS:
        return TrimKind.FUNCTIONAL
    return TrimKind.CHECK
