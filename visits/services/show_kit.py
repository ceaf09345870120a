"""What was used on a visit beyond what its cows say, as lines of the stock ledger, which is only ever added to."""

from collections.abc import Sequence
from decimal import Decimal

from visits.domain.crush_merge import merge
from visits.domain.crush_writing import WritingKind
from visits.domain.kit.stock_kinds import UseOf
from visits.domain.writing_content import KitContent
from visits.models import CrushWriting, Visit
from visits.selectors.placed_writings import placed_writings
from visits.services.kit.book_uses import Booking, UseAt, book_uses, booked_uses
from visits.services.kit.stock_place import stock_place_of
from visits.services.shown_writing import ShownWriting


def show_kit(*, visit: Visit, shown: Sequence[ShownWriting]) -> None:
    """Bring the ledger to what the latest word per consumable says; two phones count the same drawer.

    What the cows say stands on lines of its own, so both figures are kept. A word counts as used when it was first
    said, however often it was put right since.
    """
    noted_at = max(writing.noted_at for writing in shown)
    wanted = _latest_words(visit, stock_place_of(visit).pk)
    book_uses(
        booking=Booking(visit, UseOf.BY_HAND, wanted, noted_at), booked=booked_uses(visit, UseOf.BY_HAND)
    )


def _latest_words(visit: Visit, place: int) -> dict[UseAt, Decimal]:
    """For each consumable the extra that the greatest shown writing of any phone says."""
    placed = [w for w in placed_writings(visit.scope, visit) if w.group.startswith(f"{WritingKind.KIT} ")]
    standing = merge(placed)
    winners = {uid: place for uid, place in standing.items() if place.shows == uid}
    rows = CrushWriting.objects.within(visit.scope).filter(uid__in=winners, is_gone=False)
    said: dict[int, tuple[UseAt, Decimal]] = {}
    for row in sorted(rows, key=lambda row: (winners[row.uid].effective, row.uid)):
        stands = winners[row.uid]
        content = ShownWriting(row, stands.effective, stands.begun, 1, row.received_at).content()
        if isinstance(content, KitContent):
            use = UseAt(content.consumable, place, stands.begun)
            said[content.consumable] = use, content.extra
    return {use: extra for use, extra in said.values() if extra}
