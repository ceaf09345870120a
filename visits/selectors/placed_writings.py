"""The writings of a visit as the merge rule wants them."""

from trimops.kernel.scope import Scope
from visits.domain.crush_merge import PlacedWriting, group_of
from visits.models import CrushWriting, Visit

COLUMNS = ("uid", "kind", "record", "cow_id", "after", "phone", "placed_at")


def placed_writings(scope: Scope, visit: Visit) -> list[PlacedWriting]:
    """All of them, in one question, in the order in which they came."""
    rows = CrushWriting.objects.within(scope).filter(visit=visit).order_by("pk").values_list(*COLUMNS)
    return [
        PlacedWriting(uid, group_of(kind, record, cow_id), after, phone, placed_at)
        for uid, kind, record, cow_id, after, phone, placed_at in rows
    ]
