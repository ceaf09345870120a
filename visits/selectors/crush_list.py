"""The cows expected at the crush: those of the draft list, each with why, in the order of need."""

from dataclasses import dataclass

from visits.domain.draft_order import DraftLine
from visits.models import Visit
from visits.selectors.draft_cows import gather_draft


@dataclass(frozen=True)
class ExpectedCow:
    """A cow on the list of a visit, and what is said of her."""

    cow_id: int
    number: str
    why: tuple[str, ...]
    is_lame: bool


def crush_list(visit: Visit) -> list[ExpectedCow]:
    """The same before the first cow of the visit and after the last; its farm and business must be at hand.

    A fixed number of queries.
    """
    return [_expected(line) for line in gather_draft(visit).order(visit.head_count).present]


def _expected(line: DraftLine) -> ExpectedCow:
    why = (*line.reasons, line.warning) if line.warning else line.reasons
    return ExpectedCow(line.cow_id, line.number, why, line.cow.is_lame)
