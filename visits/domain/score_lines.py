"""Lines of a scoring round, as typed or as rows of a table: which cow walks how, and what is wrong with a line."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from visits.domain.mobility import MobilityScale, ScoreOutsideScale, checked_score

COW_HEADS = ("cow", "number", "animal", "ear tag", "tag", "line number", "management number", "id")
SCORE_HEADS = ("score", "mobility", "mobility score", "locomotion", "locomotion score")


@dataclass(frozen=True)
class ScoreLine:
    """A line as it was given, and what it says; `fault` is in words, empty when it can be kept."""

    at: int
    text: str
    cow_id: int | None = None
    score: int | None = None
    fault: str = ""


@dataclass(frozen=True)
class HerdNumbers:
    """The farm's cows by what they are called: keys by number (small letters), and by every other identity."""

    numbers: Mapping[str, Sequence[int]]
    others: Mapping[str, Sequence[int]]

    def find(self, name: str) -> Sequence[int]:
        """Who wears the number; nobody does: whose tag, collar or brand it is."""
        wanted = name.casefold()
        return self.numbers.get(wanted) or self.others.get(wanted) or ()


def read_score_lines(text: str, scale: MobilityScale, herd: HerdNumbers) -> list[ScoreLine]:
    """Every line that is not empty: "412 2", "412;2" or "412,2". A cow given twice must have one score."""
    lines = [
        _read(at, line.strip(), scale, herd)
        for at, line in enumerate(text.splitlines(), start=1)
        if line.strip()
    ]
    scores: dict[int, set[int]] = {}
    for line in lines:
        if line.cow_id is not None and line.score is not None:
            scores.setdefault(line.cow_id, set()).add(line.score)
    return [_twice(line, scores) for line in lines]


def lines_of_table(rows: Sequence[Sequence[str]]) -> str:
    """A table with a row of headings as such lines; by the headings, or else by the first two columns."""
    if not rows:
        return ""
    heads = [cell.strip().casefold() for cell in rows[0]]
    cow, score = _column(heads, COW_HEADS), _column(heads, SCORE_HEADS)
    if cow is None or score is None:
        cow, score = 0, 1
    return "\n".join(f"{_cell(row, cow)} {_cell(row, score)}" for row in rows[1:] if any(row))


def _column(heads: Sequence[str], known: Sequence[str]) -> int | None:
    return next((heads.index(name) for name in known if name in heads), None)


def _cell(row: Sequence[str], at: int) -> str:
    return row[at].strip() if at < len(row) else ""


def _read(at: int, text: str, scale: MobilityScale, herd: HerdNumbers) -> ScoreLine:
    name, _, told = re.sub(r"[\s,;:]+", " ", text).strip().rpartition(" ")
    if not name or not told:
        return ScoreLine(at, text, fault="a cow's number and her score are needed, such as 412 2")
    if not (told.isascii() and told.isdigit()):
        return ScoreLine(at, text, fault=f"“{told}” is no score: whole numbers only")
    try:
        score = checked_score(scale, int(told[:4]))
    except ScoreOutsideScale as fault:
        return ScoreLine(at, text, fault=str(fault))
    found = herd.find(name)
    if not found:
        return ScoreLine(at, text, fault=f"no cow here goes by {name}")
    if len(found) > 1:
        return ScoreLine(at, text, fault=f"{len(found)} cows here go by {name}: give her whole tag")
    return ScoreLine(at, text, found[0], score)


def _twice(line: ScoreLine, scores: Mapping[int, set[int]]) -> ScoreLine:
    given = sorted(scores.get(line.cow_id, ())) if line.cow_id is not None else []
    if len(given) < 2:
        return line
    return ScoreLine(
        line.at, line.text, fault=f"this cow is given {' and '.join(map(str, given))}: say which"
    )
