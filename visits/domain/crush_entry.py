"""What is put down for one cow at the crush, as plain values. Field names are those of the columns that keep them."""

from collections.abc import Iterator
from dataclasses import dataclass

from visits.domain.actions import ActionKind, BlockKind, TrimKind, trim_kind_of
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale

SIGNS = (
    "has_pain",
    "has_swelling",
    "swelling_above_dewclaw",
    "has_bad_smell",
    "drew_blood",
    "sensitive_tissue",
    "deep_infection",
    "no_better_at_recheck",
)
"""The signs looked for on a foot (T12), by their field names."""


@dataclass(frozen=True)
class FindingEntry:
    """A lesion seen: where, and how bad from 1 (slight) to 3 (severe)."""

    lesion: LesionCode
    claw: Claw
    zone: int | None = None
    severity: int = 1
    dd_stage: DDStage | None = None


@dataclass(frozen=True)
class ActionEntry:
    """One thing done; `claw` is None for what is done to the whole foot (a wrap)."""

    kind: ActionKind
    claw: Claw | None = None
    block_kind: BlockKind | None = None


@dataclass(frozen=True)
class FootEntry:
    """One lifted foot: measures (mm, degrees), signs looked for (T12), what was seen, what was done.

    `look_again_days` is set by hand: None leaves it to the rule, 0 is no need. `for_vet` is the trimmer's own word.
    """

    foot: Foot
    wall_mm: int | None = None
    wall_measured_from: str = ""
    toe_angle: int | None = None
    look_again_days: int | None = None
    for_vet: str = ""
    has_pain: bool = False
    has_swelling: bool = False
    swelling_above_dewclaw: bool = False
    has_bad_smell: bool = False
    drew_blood: bool = False
    sensitive_tissue: bool = False
    deep_infection: bool = False
    no_better_at_recheck: bool = False
    findings: tuple[FindingEntry, ...] = ()
    actions: tuple[ActionEntry, ...] = ()

    def blocks(self) -> Iterator[ActionEntry]:
        """The blocks put on this foot."""
        return (action for action in self.actions if action.kind is ActionKind.BLOCK)

    def did(self, kind: ActionKind, claw: Claw | None = None) -> bool:
        """Whether that was done (to that claw, where one is named)."""
        return any(a.kind is kind and (claw is None or a.claw is claw) for a in self.actions)


@dataclass(frozen=True)
class CowEntry:
    """One cow: how she walked in, her lifted feet, and a word."""

    feet: tuple[FootEntry, ...] = ()
    mobility_scale: MobilityScale | None = None
    mobility_score: int | None = None
    belly_band_minutes: int | None = None
    crush_seconds: int | None = None
    note: str = ""
    for_vet: str = ""

    @property
    def kind(self) -> TrimKind:
        """What kind of trim all of it amounts to (T4)."""
        return trim_kind_of(action.kind for foot in self.feet for action in foot.actions)
