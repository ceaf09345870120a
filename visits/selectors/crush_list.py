"""The cows expected at the crush, each with why, in the order in which they are best brought."""

from dataclasses import dataclass, field, replace
from datetime import date

from farms.domain.cow_status import CowStatus
from farms.models import Cow
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.crush_order import ExpectedCow, crush_order
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.models import AskedCow, Visit
from visits.selectors.before_visit import blocks_before, rechecks_before


@dataclass
class _Line:
    """What is gathered of one cow."""

    cow: Cow
    asked: AskedCow | None = None
    words: list[str] = field(default_factory=list)
    due_until: date | None = None

    def add_due(self, words: str, until: date) -> None:
        """A foot that is due, unless it was named already."""
        known = [self.asked.why, *self.words] if self.asked else self.words
        if not any(words in told for told in known):
            self.words.append(words)
        self.due_until = min(until, self.due_until or until)


def crush_day(visit: Visit) -> date:
    """The day of the visit by the business's clock: begun, planned, else the first on which it is due."""
    at = visit.started_at or visit.planned_start
    return local_day(at, visit.business.zone) if at else visit.due_from


def crush_list(scope: Scope, visit: Visit) -> list[ExpectedCow]:
    """Cows asked for, and those of the farm with a re-check or a block due by then. Three queries."""
    day = crush_day(visit)
    lines: dict[int, _Line] = {}
    asked = AskedCow.objects.within(scope).filter(visit=visit).select_related("cow").order_by("id")
    for row in asked:
        lines[row.cow_id] = _Line(row.cow, row)
    for recheck in rechecks_before(scope, visit).filter(due_from__lte=day).select_related("cow"):
        line = lines.setdefault(recheck.cow_id, _Line(recheck.cow))
        line.add_due(f"{recheck.get_foot_display()}: {recheck.what}", recheck.due_until)
    for block in blocks_before(scope, visit).filter(off_due__lte=day).select_related("cow"):
        line = lines.setdefault(block.cow_id, _Line(block.cow))
        words = f"{block.get_kind_display()} on {block.get_claw_display()}"
        line.add_due(f"{block.get_foot_display()}: {words}", block.off_due)
    return crush_order(_expected(line, visit) for line in lines.values() if _can_come(line.cow))


def _can_come(cow: Cow) -> bool:
    return CowStatus(cow.status).is_on_farm


def _score_of(line: _Line, visit: Visit) -> tuple[MobilityScale, int] | None:
    """Her own score; on an urgent visit without one, the worst that the farm told of the cows it named."""
    told: list[AskedCow | Visit] = [line.asked] if line.asked else []
    if told and visit.reason == VisitReason.URGENT:
        told.append(visit)
    for row in told:
        if row.mobility_scale and row.mobility_score is not None:
            return MobilityScale(row.mobility_scale), row.mobility_score
    return None


def _expected(line: _Line, visit: Visit) -> ExpectedCow:
    scale, score = _score_of(line, visit) or (None, None)
    cow = ExpectedCow(line.cow.pk, line.cow.number, (), scale, score, line.due_until)
    said = (line.asked.why,) if line.asked and line.asked.why else ()
    scored = (f"{'lame, ' if cow.is_lame else ''}{scale.label}: {score}",) if scale else ()
    return replace(cow, why=(*scored, *said, *line.words))
