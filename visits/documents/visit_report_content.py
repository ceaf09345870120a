"""What stands on a visit report. Observations at the trim, never a diagnosis; all words are handed in ready."""

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from trimops.paper.letterhead import Letterhead
from visits.domain.feet import Claw, Foot


@dataclass(frozen=True)
class Found:
    """A lesion seen. `place` in words ("where sole meets heel"), `severity` 1 (slight) to 3 (severe) or None.

    `stage` is that of digital dermatitis in words ("raw sore, over 2 cm").
    """

    lesion: str
    claw: Claw
    zone: int | None = None
    place: str = ""
    severity: int | None = None
    for_vet: bool = False
    stage: str = ""


@dataclass(frozen=True)
class FootLine:
    """One lifted foot: what was seen, what was done, when to look again, and why it is the vet's, as noted."""

    foot: Foot
    found: tuple[Found, ...] = ()
    done: tuple[str, ...] = ()
    block_on: Claw | None = None
    recheck_on: date | None = None
    vet: tuple[str, ...] = ()


@dataclass(frozen=True)
class CowLine:
    """One cow. `work` is what she had in words ("functional trim"); `feet` only those with something to tell.

    `walked` is the mobility score of a lame cow with its scale in words ("3, UK 0 to 3"); empty for any other.
    """

    number: str
    work: str
    feet: tuple[FootLine, ...] = ()
    note: str = ""
    walked: str = ""

    @property
    def is_plain(self) -> bool:
        """Nothing to tell but that she was done."""
        return not self.note and not any(f.found or f.block_on or f.recheck_on or f.vet for f in self.feet)


@dataclass(frozen=True)
class VetReferral:
    """A cow (one foot, or all of her) the vet is advised for: `seen` is what was seen, `told` who was told and when."""

    cow: str
    foot: Foot | None
    seen: str
    told: str = ""


@dataclass(frozen=True)
class BlockLine:
    """A block that is on at the end of the visit, and the day it must be off or looked at.

    `who` says who takes it off and when ("we come for it Tue 29 Dec, 09:40").
    """

    cow: str
    foot: Foot
    claw: Claw
    kind: str
    put_on: date
    off_by: date
    who: str = ""


@dataclass(frozen=True)
class FarmTask:
    """Something the farmer must do, with its day and cows if it has them."""

    words: str
    by: date | None = None
    cows: tuple[str, ...] = ()


@dataclass(frozen=True)
class Comparison:
    """Another visit to set this one against: "last visit, 12 Aug 2026" with the number of cows seen then.

    `whole_herd`: whether it was of the whole herd or of picked cows; None where that is not known.
    """

    label: str
    cows_seen: int
    whole_herd: bool | None = None


@dataclass(frozen=True)
class FindingCount:
    """How many cows had a lesion; `before` has one number (or None) for each comparison of the report."""

    lesion: str
    cows: int
    before: tuple[int | None, ...] = ()


@dataclass(frozen=True)
class Consumable:
    """Something used up: 3 "wooden blocks", 120 "ml" of glue."""

    name: str
    quantity: Decimal
    unit: str = ""


@dataclass(frozen=True)
class HygieneStep:
    """A step of washing and disinfecting, and whether and when it was done."""

    words: str
    done: bool
    at: datetime | None = None


@dataclass(frozen=True)
class Signature:
    """Who signed, as what, and when (aware, in the business's zone)."""

    name: str
    role: str
    at: datetime


@dataclass(frozen=True)
class VisitReport:
    """Everything on the report. Instants are aware and in the business's zone; `started` and `finished` may lack.

    `was_done` and `farm_to_do` are the trimmer's own words at the sign-off, line by line. `round_note` says in a
    sentence with which other visits this one makes a round of the herd.
    """

    letterhead: Letterhead
    farm_name: str
    visit_day: date
    made_at: datetime
    trimmers: tuple[str, ...]
    herd_size: int
    whole_herd: bool
    cows: tuple[CowLine, ...]
    started: datetime | None = None
    finished: datetime | None = None
    farm_address: tuple[str, ...] = ()
    reference: str = ""
    version: int = 1
    change_note: str = ""
    vet: tuple[VetReferral, ...] = ()
    blocks: tuple[BlockLine, ...] = ()
    to_do: tuple[FarmTask, ...] = ()
    compared: tuple[Comparison, ...] = ()
    findings: tuple[FindingCount, ...] = ()
    consumables: tuple[Consumable, ...] = ()
    hygiene_level: str = ""
    hygiene_steps: tuple[HygieneStep, ...] = ()
    next_visit: str = ""
    signed: tuple[Signature, ...] = ()
    was_done: tuple[str, ...] = ()
    farm_to_do: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    round_note: str = ""
