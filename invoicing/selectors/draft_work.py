"""The work that a draft bills, priced, and the claims on it."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from farms.models import Farm
from invoicing.domain.line_share import line_without
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.pricing import DraftLine
from invoicing.domain.visit_work import VisitWork, WorkPiece
from invoicing.domain.work_difference import Claim, taken_keys
from invoicing.models import BilledWork, FarmTerms
from invoicing.selectors.charged_work import charge_lines
from invoicing.selectors.visit_work import visit_works
from trimops.kernel.scope import Scope
from visits.models import Visit


@dataclass(frozen=True)
class PricedWork:
    """Lines for the work that nothing else holds; `pieces` by key, and the visit of each key."""

    lines: tuple[DraftLine, ...]
    pieces: Mapping[str, WorkPiece]

    @property
    def costs_something(self) -> bool:
        """Free lines alone (work under guarantee) make no invoice."""
        return any(line.unit_price for line in self.lines)


def priced_work(
    farm: Farm, visits: Sequence[Visit], claims: Sequence[BilledWork], terms: FarmTerms | None = None
) -> PricedWork:
    """What is left to bill of finished visits besides what `claims` hold, at the prices of each day. NoPrice."""
    scope = farm.scope
    works = visit_works(scope, visits)
    pieces = {piece.key: piece for work in works for piece in work.pieces}
    taken = _taken(works, claims)
    digits = minor_digits(farm.business.currency)
    lines = [line_without(line, taken, digits) for line in charge_lines(scope, farm, works, terms)]
    return PricedWork(tuple(line for line in lines if line is not None), pieces)


def claims_on(scope: Scope, visits: Sequence[Visit]) -> list[BilledWork]:
    """All that holds work of these visits, with its line."""
    rows = BilledWork.objects.within(scope).filter(visit__in=visits, holds=True)
    # because: mostly there is none, and the joins are wide
    return list(rows.select_related("line", "invoice").order_by("pk")) if rows.exists() else []


def as_claim(row: BilledWork) -> Claim:
    """A kept claim as the comparison takes it."""
    return Claim(row.pk, row.key, row.trim_id, row.line_id)


def _taken(works: Sequence[VisitWork], claims: Sequence[BilledWork]) -> set[str]:
    """Keys that are held: pieces under an older key too, and what a visit is charged for as a whole."""
    by_visit: defaultdict[int, list[Claim]] = defaultdict(list)
    for row in claims:
        by_visit[row.visit_id].append(as_claim(row))
    taken = {row.key for row in claims}
    for work in works:
        taken |= taken_keys(work.pieces, by_visit[work.visit_id])
    return taken
