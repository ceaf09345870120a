"""The finished visits of a business, as what can be learned from."""

from collections import Counter
from datetime import timedelta

from django.db.models import Count

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.actions import TrimKind
from visits.domain.visit_lengths.finished_visit import FinishedVisit, Work
from visits.domain.visit_states import VisitState
from visits.models import Block, Trim, Visit
from visits.models.visit import VisitQuerySet
from visits.selectors.expected_length import asked_of

Kinds = Counter[str]


def length_history(scope: Scope) -> list[FinishedVisit]:
    """Every finished visit with what was asked and done; what the farm has is what it has now. Three queries."""
    kinds, blocks = _trims_by_kind(scope), _blocks(scope)
    return [
        _as_finished(visit, kinds.get(visit.pk, Counter()), blocks.get(visit.pk, 0))
        for visit in finished_visits(scope).select_related("farm__business")
    ]


def finished_visits(scope: Scope) -> VisitQuerySet:
    """Those whose start and finish are both known; of a farm that was erased nobody knows what was done."""
    rows = Visit.objects.within(scope).in_state(VisitState.FINISHED).filter(farm__erased_at__isnull=True)
    return rows.filter(started_at__isnull=False, finished_at__isnull=False).order_by("finished_at", "id")


def _as_finished(visit: Visit, kinds: Kinds, blocks: int) -> FinishedVisit:
    if visit.started_at is None or visit.finished_at is None:
        raise ValueError(f"visit {visit.pk} has no start or no finish")
    work = Work(kinds[TrimKind.FUNCTIONAL], kinds[TrimKind.CORRECTIVE], kinds[TrimKind.CHECK], blocks)
    minutes = (visit.finished_at - visit.started_at) / timedelta(minutes=1)
    return FinishedVisit(
        asked_of(visit), local_day(visit.started_at, visit.farm.business.zone), minutes, work
    )


def _trims_by_kind(scope: Scope) -> dict[int, Kinds]:
    rows = Trim.objects.within(scope).values_list("visit_id", "kind").annotate(cows=Count("id")).order_by()
    found: dict[int, Kinds] = {}
    for visit_id, kind, cows in rows:
        found.setdefault(visit_id, Counter())[kind] = cows
    return found


def _blocks(scope: Scope) -> dict[int, int]:
    rows = Block.objects.within(scope).values_list("put_on_by__visit_id").annotate(number=Count("id"))
    return {visit_id: number for visit_id, number in rows.order_by() if visit_id is not None}
