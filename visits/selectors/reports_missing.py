"""Finished visits whose report was never issued: those from before reports were kept."""

from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import IssuedReport, Visit


def visits_without_report(scope: Scope, most: int | None = None) -> list[Visit]:
    """Newest first, at most so many."""
    issued = IssuedReport.objects.within(scope).values("visit_id")
    rows = Visit.objects.within(scope).in_state(VisitState.FINISHED).exclude(pk__in=issued)
    rows = rows.filter(farm__erased_at__isnull=True)
    return list(rows.order_by("-finished_at", "-pk")[:most])
