"""What stands in the pictures of a herd's feet, and on the paper of its year. All words are handed in ready.

Every number here is in the unit that is drawn: 12.5 "per 100 cows seen" is 12.5, not 0.125. A figure that rests on
nothing is None, never zero. `visits.documents.herd.picture.draw` makes the drawing of any of the six contents; it gives
None when there is nothing to draw, and then the sentence stands alone.
"""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from typing import Final

from trimops.paper.drawing import Drawing
from trimops.paper.letterhead import Letterhead
from visits.domain.feet import Claw, Foot

HOW_TO_READ: Final = (
    "The line through a mark shows how far chance alone may move the figure (95 % interval); "
    "few cows make a long line."
)
"""For page and paper, once beside the pictures."""


@dataclass(frozen=True)
class Reading:
    """A figure with the interval it lies in; `low` and `high` are None when no interval is known (in print, say)."""

    value: float
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True)
class TimePoint:
    """One trim round. `whole_herd` False is drawn hollow and apart: picked cows do not stand for the herd."""

    day: date
    reading: Reading
    whole_herd: bool
    seen: int = 0


@dataclass(frozen=True)
class ChangeSeen:
    """A change that the chart of the farm's own past flags: since when, and whether the figure rose."""

    since: date
    rises: bool


@dataclass(frozen=True)
class OverTime:
    """Picture 1. `unit` is written over the axis: "cows with any lesion, per 100 seen". Points in order of days."""

    unit: str
    points: tuple[TimePoint, ...]
    changes: tuple[ChangeSeen, ...] = ()

    @property
    def is_empty(self) -> bool:
        return not self.points


@dataclass(frozen=True)
class KindYear:
    """New cases of one year, each with its interval. `label` is "2025", or "2026 so far"."""

    label: str
    infectious: Reading | None
    claw_horn: Reading | None


@dataclass(frozen=True)
class Kinds:
    """Picture 2. Years in order."""

    unit: str
    years: tuple[KindYear, ...]

    @property
    def is_empty(self) -> bool:
        return all(year.infectious is None and year.claw_horn is None for year in self.years)


@dataclass(frozen=True)
class ZoneCount:
    """How many cases at one place. The skin between and behind the claws has the claw SKIN.

    `zone` None: the place was not noted; those are told below the drawing, not drawn somewhere
    (and alone they make no drawing).
    """

    foot: Foot
    claw: Claw
    zone: int | None
    cases: int


@dataclass(frozen=True)
class SoleHeat:
    """Picture 3. `what` says what is counted: "cases"."""

    counts: tuple[ZoneCount, ...]
    what: str = "cases"

    @property
    def is_empty(self) -> bool:
        return not any(count.cases for count in self.counts if count.zone is not None)


@dataclass(frozen=True)
class CowGroup:
    """One group of cows: `count` of the `seen` had it. `reading` is None when none of the group was seen."""

    label: str
    reading: Reading | None
    count: int
    seen: int


@dataclass(frozen=True)
class Split:
    """One way to part the cows: "Lactation", "Days in milk", "Season"."""

    label: str
    groups: tuple[CowGroup, ...]


@dataclass(frozen=True)
class WhichCows:
    """Picture 4. `everyone` is the line all groups are read against."""

    unit: str
    splits: tuple[Split, ...]
    everyone: Reading | None = None

    @property
    def is_empty(self) -> bool:
        return not any(group.reading for split in self.splits for group in split.groups)


@dataclass(frozen=True)
class FreeStep:
    """From `day` on, `share` of 100 treated feet had not been treated again, until the next step."""

    day: int
    share: Reading


@dataclass(frozen=True)
class TimeToNext:
    """Picture 5. Steps in order of days, the first at day 0 with 100. `followed`: (day, feet still followed).

    `last_day` is how far the feet were followed; `half_by` the day by which half of them were treated again.
    """

    steps: tuple[FreeStep, ...]
    followed: tuple[tuple[int, int], ...]
    last_day: int
    half_by: int | None = None

    @property
    def is_empty(self) -> bool:
        return not self.steps or self.last_day <= 0


class Party(StrEnum):
    """Whose figure it is. The other herds are shown as one range from herd to herd: no names, no rank."""

    OWN = "own"
    OTHERS = "others"
    PUBLISHED = "published"


@dataclass(frozen=True)
class SetAgainst:
    """One line of a comparison: "this herd", "11 other herds of …", "Norway, 2022 (whole herds)".

    For OTHERS the reading's `low` and `high` are the range from herd to herd, and `value` its middle.
    """

    label: str
    party: Party
    reading: Reading | None


@dataclass(frozen=True)
class Contest:
    """One figure set against others: "Cows with a sole ulcer"."""

    what: str
    lines: tuple[SetAgainst, ...]


@dataclass(frozen=True)
class AgainstOthers:
    """Picture 6."""

    unit: str
    contests: tuple[Contest, ...]

    @property
    def is_empty(self) -> bool:
        return not any(line.reading for contest in self.contests for line in contest.lines)


HerdContent = OverTime | Kinds | SoleHeat | WhichCows | TimeToNext | AgainstOthers


@dataclass(frozen=True)
class HerdPicture:
    """A picture with its finding. `sentence` is written only when the interval supports it, else "too few cows to
    tell"; `basis` says what it rests on. `drawing` None: there is nothing to draw yet."""

    title: str
    sentence: str
    drawing: Drawing | None
    basis: str = ""


@dataclass(frozen=True)
class FigureRow:
    """One line of a table: what, the figure in words, what it rests on, and its source if it is not our own."""

    what: str
    figure: str
    basis: str = ""
    source: str = ""


@dataclass(frozen=True)
class FigureTable:
    """The figures without a picture: mobility, blocks and re-checks, costs. `note` stands under the heading."""

    title: str
    rows: tuple[FigureRow, ...]
    note: str = ""


@dataclass(frozen=True)
class HerdStory:
    """The yearly paper. `answer` is its title ("High Thornbeck: fewer sole ulcers than last year"), `facts` one line
    on herd, visits and cows seen. `made_at` is aware, in the business's zone."""

    letterhead: Letterhead
    farm_name: str
    year: int
    made_at: datetime
    answer: str
    facts: str
    pictures: tuple[HerdPicture, ...]
    tables: tuple[FigureTable, ...] = ()
    cautions: tuple[str, ...] = ()
