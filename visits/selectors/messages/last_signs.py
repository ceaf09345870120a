"""When something was last heard from visits under way."""

from collections.abc import Collection
from datetime import datetime

from django.db.models import Max

from trimops.kernel.scope import Scope
from visits.models import CrushWriting, Trim, Visit


def last_signs(scope: Scope, visits: Collection[Visit]) -> dict[int, datetime]:
    """Visit under way -> the newest of its start, its cows, and what its phones sent. Two queries."""
    signs = {visit.pk: visit.started_at for visit in visits if visit.started_at and not visit.finished_at}
    heard = CrushWriting.objects.within(scope).filter(visit__in=signs).values_list("visit_id").order_by()
    cows = Trim.objects.within(scope).filter(visit__in=signs).values_list("visit_id").order_by()
    for pk, at in [*heard.annotate(last=Max("received_at")), *cows.annotate(last=Max("recorded_at"))]:
        signs[pk] = max(signs[pk], at)
    return signs


def vans_under_way(scope: Scope, since: datetime, until: datetime) -> list[int]:
    """Keys of vans that began a visit after `since` and have another ahead before `until`. One query."""
    rows = Visit.objects.within(scope).filter(started_at__gte=since, van__isnull=False)
    ahead = Visit.objects.within(scope).open().filter(started_at__isnull=True)
    ahead = ahead.filter(planned_start__gte=since, planned_start__lt=until)
    found = rows.filter(van__in=ahead.values("van")).values_list("van_id", flat=True)
    return sorted({pk for pk in found if pk is not None})
