"""Which blades were in hand on a visit, and what was said of them, as it shows."""

from collections.abc import Collection, Sequence
from uuid import UUID

from visits.domain.kit.blade_kinds import TurnPart
from visits.domain.writing_content import BladeContent
from visits.models import Blade, BladeSaid, BladeTurn, Visit
from visits.services.kit.settle_blade import settle_blade
from visits.services.shown_writing import ShownWriting


def show_blades(*, visit: Visit, shown: Sequence[ShownWriting]) -> None:
    """One turn for each that shows, none for one taken back; blades said cracked or chipped are out of use at once,
    and back as they were when that word is taken back.
    """
    records = [writing.row.record for writing in shown]
    before = _named(visit, records)
    gone = [writing.row.record for writing in shown if writing.row.is_gone]
    BladeTurn.objects.within(visit.scope).filter(record__in=gone).delete()
    for writing in shown:
        content = writing.content()
        if not writing.row.is_gone and isinstance(content, BladeContent):
            _say(_turn(visit, writing, content), content)
    # In one order, so that two visits that name the same blades do not wait for each other in a ring.
    touched = before | _named(visit, records)
    for blade in (
        Blade.objects.within(visit.scope).filter(pk__in=touched).select_related("business").order_by("pk")
    ):
        settle_blade(blade=blade)


def _named(visit: Visit, records: Collection[UUID]) -> set[int]:
    said = BladeSaid.objects.within(visit.scope).filter(turn__record__in=records)
    return set(said.values_list("blade_id", flat=True))


def _turn(visit: Visit, writing: ShownWriting, content: BladeContent) -> BladeTurn:
    turns = BladeTurn.objects.within(visit.scope)
    turn = turns.filter(record=writing.row.record).first() or BladeTurn(
        business_id=visit.business_id, visit=visit, record=writing.row.record
    )
    # The phone's clock was off by as much for the change of hands as for the writing of it.
    off_by = writing.row.placed_at - writing.row.made_at
    turn.at, turn.by_id = min(content.at + off_by, writing.row.received_at), writing.row.by_id
    turn.full_clean()
    turn.save()
    return turn


def _say(turn: BladeTurn, content: BladeContent) -> None:
    """What it says of each blade now, and nothing of what an earlier version said."""
    rows = BladeSaid.objects.within(turn.scope).filter(turn=turn)
    wanted = {(part, blade) for part, blades in content.by_part().items() for blade in blades}
    there = {(TurnPart(row.part), row.blade_id): row.pk for row in rows}
    rows.filter(pk__in=[pk for said, pk in there.items() if said not in wanted]).delete()
    BladeSaid.objects.bulk_create(
        BladeSaid(business_id=turn.business_id, turn=turn, blade_id=blade, part=part.value)
        for part, blade in sorted(wanted - there.keys())
    )
