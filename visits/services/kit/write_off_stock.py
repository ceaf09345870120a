"""Stock that will not be used any more leaves the ledger, which says why."""

from collections.abc import Sequence

from django.db import transaction

from visits.domain.kit.stock_kinds import MovementKind, WriteOffReason
from visits.models import StockMovement, StockPlace
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.settle_counts import settle_counts
from visits.services.kit.stock_word import (
    Amount,
    StockWord,
    booked_before,
    refuse_amounts,
    refuse_moment,
    refuse_more_than_is_there,
)


@transaction.atomic
def write_off_stock(
    *,
    place: StockPlace,
    gone: Sequence[Amount],
    because: WriteOffReason,
    word: StockWord,
    is_really_there: bool = False,
) -> list[StockMovement]:
    """A line of the ledger for each, of its lot where one is named.

    The same `uid` again gives what was booked then. MoreThanIsThere where the ledger does not know of so much, unless
    `is_really_there`. StockRefused or ValidationError say what else to mend.
    """
    lock_stock(scope=place.scope)
    if before := booked_before(place.scope, word):
        return before
    refuse_moment(word)
    refuse_amounts(gone, nought=False)
    if not is_really_there:
        refuse_more_than_is_there(place, gone, word)
    rows = [_line(place, each, because, word) for each in gone]
    for row in rows:
        row.full_clean()
        row.save()
    touched = {(each.consumable.pk, place.pk) for each in gone}
    settle_counts(scope=place.scope, touched=touched, since=word.at, noted_at=word.noted_at)
    return rows


def _line(place: StockPlace, each: Amount, because: WriteOffReason, word: StockWord) -> StockMovement:
    return StockMovement(
        business_id=place.business_id,
        consumable=each.consumable,
        place=place,
        kind=MovementKind.WRITTEN_OFF.value,
        quantity=-each.quantity,
        at=word.at,
        lot=each.lot,
        because=because.value,
        note=word.note.strip(),
        by=word.by,
        noted_at=word.noted_at,
        uid=word.uid,
    )
