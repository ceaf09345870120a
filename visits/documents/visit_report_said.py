"""A report in words, made once for the page and the paper: whoever has read one has read the other."""

from dataclasses import dataclass

from visits.documents.sole_drawing import SoleView


@dataclass(frozen=True)
class Line:
    """A line whose first words stand out; either part may be empty."""

    lead: str
    text: str = ""


@dataclass(frozen=True)
class BlocksDue:
    """The blocks that come off by one day: "By Tue 29 Dec, 3 wooden blocks:", who takes them off, a line for each."""

    day: str
    who: str
    lines: tuple[Line, ...]


@dataclass(frozen=True)
class CountHead:
    """The head of a column of counts: which visit, and out of how many cows."""

    label: str
    seen: str


@dataclass(frozen=True)
class CountRow:
    """How many cows had a lesion: this time, and at the visits compared."""

    lesion: str
    cows: str
    before: tuple[str, ...]


@dataclass(frozen=True)
class Counts:
    """The sentence that says what the counts rest on, the counts (none: `nothing` says why), and what the
    differences between them are worth."""

    basis: str
    heads: tuple[CountHead, ...]
    rows: tuple[CountRow, ...]
    nothing: str = ""
    difference: str = ""


@dataclass(frozen=True)
class FoundSaid:
    """ "Sole ulcer" + ", clear: outer claw, where sole meets heel (4)"; `vet` is empty or "Vet advised"."""

    lesion: str
    rest: str
    vet: str = ""


@dataclass(frozen=True)
class FootSaid:
    """A foot's row. `vet` is empty or why the vet is advised for this foot, as it was noted."""

    foot: str
    sole: SoleView
    found: tuple[FoundSaid, ...]
    done: str
    again: str
    vet: str = ""


@dataclass(frozen=True)
class CowSaid:
    number: str
    walked: str
    feet: tuple[FootSaid, ...]
    note: str


@dataclass(frozen=True)
class ReportSaid:
    """All of it, in the order in which it is read. `nothing_…` says so where a list is empty."""

    title: str
    mark: str
    facts: str
    change: str
    vet: tuple[Line, ...]
    blocks: tuple[BlocksDue, ...]
    to_do: tuple[Line, ...]
    counts: Counts
    cows: tuple[CowSaid, ...]
    plain_cows: tuple[str, ...]
    hygiene: tuple[Line, ...]
    used: str
    next_visit: str
    signed: tuple[str, ...]
    was_done: tuple[str, ...]
    farm_to_do: tuple[str, ...]
    cautions: tuple[str, ...]


NO_VET = "No cow for the vet this time."
NO_BLOCK = "No block is on."
NO_TASK = "Nothing this time."
VET_ADVISED = "Vet advised"
READING_AID = (
    "Soles are seen from below, toes up; O stands at the outer claw. Dot: lesion seen. Red diamond: vet advised. "
    "Hatched: block. Numbers in brackets: zone of the claw, ILC map. Severity: slight, clear or severe."
)
