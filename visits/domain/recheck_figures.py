"""The days after which a foot is due again: published defaults, each a business's own figure.

A block is looked at after about four weeks (Univ. Minnesota Extension 2015), a wooden one is of no more use after
three (German trial by Maierl and Fiedler), foam drops off by itself in 7 to 20 days, a shoe must come off and stays
at least six weeks (AHDB 2021). Digital dermatitis 3 to 7 days, foul 2 to 3 days and a lame cow without a block 14
days: from memory (trade-facts 3.5).
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from visits.domain.actions import BlockKind
from visits.domain.lesions import LesionCode

Days = tuple[int, int]


class FigureOutOfRange(ValueError):
    """A business's own figure makes no sense; the message says which and what to mend."""


@dataclass(frozen=True)
class RecheckFigures:
    """First and last day after the trim on which each kind of foot is due, and when overdue is said loudly."""

    block: Mapping[BlockKind, Days] = field(
        default_factory=lambda: {
            BlockKind.WOOD: (21, 28),
            BlockKind.RUBBER: (25, 32),
            BlockKind.EVA: (14, 21),
            BlockKind.SHOE: (42, 49),
        }
    )
    lesion: Mapping[LesionCode, Days] = field(
        default_factory=lambda: {
            LesionCode.SU: (21, 28),
            LesionCode.U: (21, 28),
            LesionCode.BU: (21, 28),
            LesionCode.TU: (21, 28),
            LesionCode.WLA: (21, 28),
            LesionCode.DD: (3, 7),
            LesionCode.IP: (2, 3),
        }
    )
    lame_trim: Days = (10, 14)
    overdue_days: int = 42

    @classmethod
    def from_overrides(cls, overrides: Mapping[str, object]) -> "RecheckFigures":
        """The defaults with a business's own figures, keys `block.wood`, `lesion.SU`, `lame_trim`,
        `overdue_days`.

        Values are [first, last] in days (overdue_days: one number). FigureOutOfRange names the faulty key.
        """
        usual = cls()
        block = {k: _days(overrides, f"block.{k.value}", v) for k, v in usual.block.items()}
        lesion = {k: _days(overrides, f"lesion.{k.value}", v) for k, v in usual.lesion.items()}
        overdue = overrides.get("overdue_days", usual.overdue_days)
        if not isinstance(overdue, int) or isinstance(overdue, bool) or overdue < 1:
            raise FigureOutOfRange("overdue_days: must be a whole number of days, 1 or more")
        return cls(block, lesion, _days(overrides, "lame_trim", usual.lame_trim), overdue)


def _days(overrides: Mapping[str, object], key: str, usual: Days) -> Days:
    given = overrides.get(key)
    if given is None:
        return usual
    if not (isinstance(given, list | tuple) and len(given) == 2 and all(_is_day(d) for d in given)):
        raise FigureOutOfRange(f"{key}: must be two whole numbers of days, first and last")
    first, last = given
    if last < first:
        raise FigureOutOfRange(f"{key}: the last day ({last}) is before the first ({first})")
    return int(first), int(last)


def _is_day(value: object) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and 0 <= value <= 365
