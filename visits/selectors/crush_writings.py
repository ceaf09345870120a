"""The writings of a visit as they go over the wire, each with whether it shows and what stands beside it."""

from collections.abc import Mapping
from dataclasses import dataclass
from uuid import UUID

from trimops.kernel.scope import Scope
from visits.domain.crush_merge import Standing, merge
from visits.models import CrushWriting, Visit
from visits.selectors.placed_writings import placed_writings

MOST_AT_ONCE = 200


@dataclass(frozen=True)
class Writings:
    """Writings as plain values; `cursor` is the place of the last one, to be given as `seen` next time."""

    rows: list[dict[str, object]]
    cursor: int
    has_more: bool = False


def writings_of(
    scope: Scope,
    visit: Visit,
    *,
    seen: int = 0,
    not_by_phone: UUID | None = None,
    most: int | None = MOST_AT_ONCE,
) -> Writings:
    """The visit's writings after `seen` in the order in which they came, without those of one phone."""
    rows = CrushWriting.objects.within(scope).filter(visit=visit, pk__gt=seen).select_related("by")
    if not_by_phone is not None:
        rows = rows.exclude(phone=not_by_phone)
    found = list(rows.order_by("pk")[: most + 1] if most is not None else rows.order_by("pk"))
    told = found[:most] if most is not None else found
    standings = standings_of(scope, visit)
    return Writings(
        rows=[writing_on_wire(row, standings[row.uid]) for row in told],
        cursor=told[-1].pk if told else seen,
        has_more=len(found) > len(told),
    )


def standings_of(scope: Scope, visit: Visit) -> Mapping[UUID, Standing]:
    """Where each writing of the visit stands, by uid. One query, without what they say."""
    return merge(placed_writings(scope, visit))


def writing_on_wire(row: CrushWriting, standing: Standing) -> dict[str, object]:
    """A writing as another phone is told it."""
    return {
        "uid": str(row.uid),
        "kind": row.kind,
        "record": str(row.record),
        "cow_id": row.cow_id,
        "after": str(row.after) if row.after else None,
        "made_at": row.made_at.isoformat(),
        "not_before": None,
        "is_gone": row.is_gone,
        "content": row.content,
        "placed_at": row.placed_at.isoformat(),
        "by": row.by.name,
        "phone": str(row.phone),
        "shows": standing.shows == row.uid,
        "beside": [str(uid) for uid in standing.beside],
    }
