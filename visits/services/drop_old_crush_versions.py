"""Earlier versions of what phones wrote at visits that are long over; what counted in the end stays."""

from collections import defaultdict
from collections.abc import Collection, Iterator
from datetime import datetime

from django.db import transaction

from trimops.kernel.scope import Scope
from visits.domain.crush_merge import PlacedWriting, group_of, merge
from visits.domain.visit_states import VisitState
from visits.models import CrushWriting, Visit

AT_ONCE = 100
COLUMNS = ("visit_id", "pk", "uid", "kind", "record", "cow_id", "after", "phone", "placed_at")


def drop_old_crush_versions(*, scope: Scope, before: datetime, at: datetime) -> int:
    """Drop every version that does not show, of visits finished before that aware instant; how many.

    Such a visit takes nothing from phones any more: a version that is gone would come as new, and what an edit was
    made of is not known. Reports, letters and invoices rest on what shows.
    """
    dropped = 0
    while keys := _old(scope, before):
        dropped += _settle(scope, keys, at)
    return dropped


def _old(scope: Scope, before: datetime) -> list[int]:
    rows = Visit.objects.within(scope).in_state(VisitState.FINISHED)
    rows = rows.filter(finished_at__lt=before, versions_dropped_at=None)
    return list(rows.order_by("pk").values_list("pk", flat=True)[:AT_ONCE])


@transaction.atomic
def _settle(scope: Scope, keys: Collection[int], at: datetime) -> int:
    # because: a phone may be sending to one of them at this moment
    visits = Visit.objects.within(scope).filter(pk__in=keys).order_by("pk").locked()
    locked = [visit.pk for visit in visits]
    gone = list(_superseded(scope, locked))
    for start in range(0, len(gone), AT_ONCE):
        CrushWriting.objects.within(scope).filter(pk__in=gone[start : start + AT_ONCE]).delete()
    Visit.objects.within(scope).filter(pk__in=locked).update(versions_dropped_at=at)
    return len(gone)


def _superseded(scope: Scope, visits: Collection[int]) -> Iterator[int]:
    """The keys of writings that do not show. One query."""
    rows = CrushWriting.objects.within(scope).filter(visit_id__in=visits).order_by("pk").values_list(*COLUMNS)
    by_visit: dict[int, dict[int, PlacedWriting]] = defaultdict(dict)
    for visit, pk, uid, kind, record, cow_id, after, phone, placed_at in rows:
        group = group_of(kind, record, cow_id)
        by_visit[visit][pk] = PlacedWriting(uid, group, after, phone, placed_at)
    for writings in by_visit.values():
        standing = merge(writings.values())
        yield from (pk for pk, writing in writings.items() if standing[writing.uid].shows != writing.uid)
