"""The top of the report, for one look: for the vet, blocks and their dates, what the farmer must do."""

from typing import TypeVar

from reportlab.platypus import Flowable, Paragraph, Spacer

from trimops.paper.colours import Meaning, Tint
from trimops.paper.headings import SignedHeading
from trimops.paper.letterhead import Letterhead, letterhead_block
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.side_by_side import side_by_side
from trimops.paper.styles import TITLE, lead_words, style, words
from visits.documents.visit_report_said import NO_BLOCK, NO_TASK, NO_VET, BlocksDue, Line, ReportSaid
from visits.documents.visit_report_sizes import Sizes

K = TypeVar("K", bound=Flowable)
# Points: three columns are one look; past it they are stacked.
_TALLEST = 480.0


def report_top(letterhead: Letterhead, said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    """Letterhead, title, the facts of the visit, and the three columns."""
    return [
        letterhead_block(letterhead, said.mark),
        words(said.title, style(TITLE, bold=True, after=3)),
        words(said.facts, style(sizes.read, tint=Tint.QUIET, after=4)),
        *([words(said.change, style(sizes.read, bold=True))] if said.change else []),
        Spacer(0, 6),
        *side_by_side([columns(said, sizes) for columns in (_vet, _blocks, _to_do)], TEXT_WIDTH, _TALLEST),
    ]


def _vet(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    lines = [_item(line, sizes) for line in said.vet]
    return [_heading("For the vet", Meaning.URGENT), *(lines or [_nothing(NO_VET, sizes)])]


def _blocks(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    lines = [line for due in said.blocks for line in _blocks_due(due, sizes)]
    return [_heading("Blocks to come off", Meaning.DUE), *(lines or [_nothing(NO_BLOCK, sizes)])]


def _blocks_due(due: BlocksDue, sizes: Sizes) -> list[Paragraph]:
    """The day stays with its first cow."""
    lines = [_item(line, sizes, before=0) for line in due.lines]
    return [_kept(_item(Line(due.day, due.who), sizes)), *lines]


def _to_do(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    lines = [_item(line, sizes) for line in said.to_do]
    return [_heading("For you to do", Meaning.PLANNED), *(lines or [_nothing(NO_TASK, sizes)])]


def _heading(text: str, meaning: Meaning) -> Flowable:
    """A heading that goes to the next page with its first line."""
    return _kept(SignedHeading(text, meaning))


def _kept(flowable: K) -> K:
    """Where the columns are stacked, on one page with what follows."""
    flowable.keepWithNext = 1
    return flowable


def _item(line: Line, sizes: Sizes, before: float = 3) -> Paragraph:
    return lead_words(line.lead, line.text, style(sizes.read, before=before))


def _nothing(text: str, sizes: Sizes) -> Paragraph:
    return words(text, style(sizes.read, tint=Tint.QUIET, before=3))
