"""Mobility scores, and how soon a lame cow is to be seen.

A score is kept with the id of its scale and is never turned into another scale's: no validated table of one
against the other was found (trade-facts D6). Sources: UK 0 to 3 score sheet of January 2011; Sprecher et al.
1997, Theriogenology 47:1179; response times: Leach 2012 (within 48 h of scoring), trim-list article of the UK
levy board ("same day" for an on-farm team).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum


class MobilityScale(StrEnum):
    """The score sheet a score was read on."""

    UK = "UK0-3"
    SPRECHER = "S1-5"

    @property
    def label(self) -> str:
        return {MobilityScale.UK: "UK 0 to 3", MobilityScale.SPRECHER: "Sprecher 1 to 5"}[self]

    @property
    def scores(self) -> range:
        """The scores the sheet knows."""
        return range(0, 4) if self is MobilityScale.UK else range(1, 6)

    @property
    def lame_from(self) -> int:
        """The lowest score called lame (UK 2; 1 to 5 scale commonly 3)."""
        return 2 if self is MobilityScale.UK else 3

    @property
    def very_lame_from(self) -> int:
        """The lowest score that wants attention the same day (UK 3; on 1 to 5, 4: by analogy, no source)."""
        return 3 if self is MobilityScale.UK else 4


class Urgency(StrEnum):
    """How soon a cow is to be looked at."""

    NONE = "none"
    SOON = "soon"
    SAME_DAY = "same_day"

    @property
    def label(self) -> str:
        return _LABELS[self]

    @property
    def days(self) -> int | None:
        """Days from the day she was seen lame until she is to be looked at; None when nothing presses."""
        return {Urgency.NONE: None, Urgency.SOON: 2, Urgency.SAME_DAY: 0}[self]


_LABELS = {
    Urgency.NONE: "no hurry",
    Urgency.SOON: "as soon as practically possible, within 48 hours",
    Urgency.SAME_DAY: "today",
}
_RANK = {Urgency.NONE: 0, Urgency.SOON: 1, Urgency.SAME_DAY: 2}


class ScoreOutsideScale(ValueError):
    """The scale has no such score."""


@dataclass(frozen=True)
class DueRange:
    """The first and the last day on which something is to be done, both included."""

    first: date
    last: date

    def __post_init__(self) -> None:
        if self.last < self.first:
            raise ValueError(f"due range ends {self.last} before it starts {self.first}")

    def overlap(self, other: "DueRange") -> "DueRange | None":
        """The days in both; None when there are none."""
        first, last = max(self.first, other.first), min(self.last, other.last)
        return DueRange(first, last) if first <= last else None


def checked_score(scale: MobilityScale, score: int) -> int:
    """The score itself; raises ScoreOutsideScale when the sheet does not have it."""
    if score not in scale.scores:
        first, last = scale.scores[0], scale.scores[-1]
        raise ScoreOutsideScale(f"{scale.label} runs from {first} to {last}, not {score}")
    return score


def is_lame(scale: MobilityScale, score: int) -> bool:
    """Whether the score counts as lame on its own scale."""
    return checked_score(scale, score) >= scale.lame_from


def urgency_of(scale: MobilityScale, score: int) -> Urgency:
    """How soon a cow with this score is to be seen (T15: trim as soon as lameness is seen)."""
    if checked_score(scale, score) >= scale.very_lame_from:
        return Urgency.SAME_DAY
    return Urgency.SOON if score >= scale.lame_from else Urgency.NONE


def worst_score(scores: Sequence[tuple[MobilityScale, int]]) -> tuple[MobilityScale, int] | None:
    """The score that presses most, the first of several that press alike; scores of two sheets are never compared
    but by how soon each wants to be seen. None for no score."""
    return max(scores, key=lambda each: _RANK[urgency_of(*each)], default=None)


def most_urgent(urgencies: list[Urgency]) -> Urgency:
    """The most pressing of several; `none` for an empty list."""
    return max(urgencies, key=_RANK.__getitem__, default=Urgency.NONE)


def due_range(urgency: Urgency, seen_on: date, days_without_hurry: int = 28) -> DueRange:
    """The days in which the visit is due, counted from the day the lameness was seen.

    Same day: that day alone. Soon: that day and the two after (48 h). Without hurry: `days_without_hurry`
    days, a setting of the business (common practice, no source).
    """
    days = urgency.days
    return DueRange(seen_on, seen_on + timedelta(days=days_without_hurry if days is None else days))


def share_lame(scale: MobilityScale, scores: list[int]) -> float | None:
    """Lame cows over cows scored, 0 to 1; None when none was scored. UK: (n2 + n3) / n."""
    if not scores:
        return None
    return sum(is_lame(scale, score) for score in scores) / len(scores)
