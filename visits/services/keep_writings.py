"""Writings are kept for good, and what they are about is brought to what shows now."""

from collections.abc import Collection, Sequence
from datetime import datetime

from visits.domain.crush_merge import PlacedWriting, Standing, group_of, merge
from visits.domain.crush_writing import WritingKind
from visits.models import CrushWriting, Visit
from visits.selectors.placed_writings import placed_writings
from visits.services.show_blades import show_blades
from visits.services.show_cows import show_cows
from visits.services.show_kit import show_kit
from visits.services.show_sign_off import show_sign_off
from visits.services.show_wash_downs import show_wash_downs
from visits.services.shown_writing import ShownWriting

SHOWS = {
    WritingKind.COW: show_cows,
    WritingKind.WASH: show_wash_downs,
    WritingKind.KIT: show_kit,
    WritingKind.BLADE: show_blades,
    WritingKind.SIGN_OFF: show_sign_off,
}


def keep_writings(*, visit: Visit, rows: Sequence[CrushWriting]) -> None:
    """Keep new `rows` of the locked `visit`; each thing they are versions of then says what the merge rule shows.

    What is shown depends on the writings alone, not on the order in which they came.
    """
    if not rows:
        return
    CrushWriting.objects.bulk_create(rows)
    placed = placed_writings(visit.scope, visit)
    touched = {group_of(row.kind, row.record, row.cow_id) for row in rows}
    shown = _shown(visit, placed, touched, max(row.received_at for row in rows))
    for kind, show in SHOWS.items():
        if of_kind := [writing for writing in shown if writing.row.kind == kind]:
            show(visit=visit, shown=of_kind)


def _shown(
    visit: Visit, placed: Sequence[PlacedWriting], touched: Collection[str], noted_at: datetime
) -> list[ShownWriting]:
    groups: dict[str, list[PlacedWriting]] = {group: [] for group in touched}
    for writing in placed:
        if writing.group in groups:
            groups[writing.group].append(writing)
    standing = merge(writing for group in groups.values() for writing in group)
    winners = {standing[group[0].uid].shows: len(group) for group in groups.values()}
    rows = CrushWriting.objects.within(visit.scope).filter(uid__in=winners).order_by("pk")
    return [_shown_writing(row, standing[row.uid], winners[row.uid], noted_at) for row in rows]


def _shown_writing(row: CrushWriting, place: Standing, versions: int, noted_at: datetime) -> ShownWriting:
    return ShownWriting(row, place.effective, place.begun, versions, noted_at)
