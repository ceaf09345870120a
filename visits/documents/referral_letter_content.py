"""What stands on the letter that hands a cow to the vet. Observations at the trim, never a diagnosis."""

from dataclasses import dataclass
from datetime import date, datetime

from trimops.paper.letterhead import Letterhead
from visits.documents.visit_report_content import Found
from visits.domain.feet import Claw, Foot


@dataclass(frozen=True)
class Earlier:
    """What was seen on the foot on an earlier day, in words ("sole ulcer, clear: outer claw, zone 4")."""

    day: date
    words: str


@dataclass(frozen=True)
class LetterFoot:
    """One foot the vet is advised for: why, what was seen, what was done and what was not."""

    foot: Foot
    why: tuple[str, ...]
    found: tuple[Found, ...] = ()
    signs: tuple[str, ...] = ()
    done: tuple[str, ...] = ()
    not_done: tuple[str, ...] = ()
    block_on: Claw | None = None
    earlier: tuple[Earlier, ...] = ()


@dataclass(frozen=True)
class LetterPhoto:
    """A photo by its id and the hash of its bytes, which are kept elsewhere. `foot` is None where none was named."""

    uid: str
    sha256: str
    taken_at: datetime
    foot: Foot | None = None


@dataclass(frozen=True)
class Known:
    """One thing known of the cow or the farm: "Official ear tag", "UK 123456 700123"."""

    name: str
    value: str


@dataclass(frozen=True)
class ReferralLetterContent:
    """The whole letter. Instants are aware and in the business's zone. `whole_cow`: why, where it is no one foot."""

    letterhead: Letterhead
    farm_name: str
    cow: str
    visit_day: date
    made_at: datetime
    trimmer: str
    addressed_to: str = ""
    reference: str = ""
    version: int = 1
    change_note: str = ""
    of_cow: tuple[Known, ...] = ()
    of_farm: tuple[Known, ...] = ()
    walked: tuple[str, ...] = ()
    whole_cow: tuple[str, ...] = ()
    feet: tuple[LetterFoot, ...] = ()
    told: tuple[str, ...] = ()
    note: str = ""
    photos: tuple[LetterPhoto, ...] = ()
    photos_left_out: int = 0
    cautions: tuple[str, ...] = ()
