"""Stock goes from the store to a van, back, or from van to van."""

from collections.abc import Sequence
from dataclasses import dataclass

from django.db import transaction

from visits.domain.kit.stock_kinds import MovementKind
from visits.models import StockMovement, StockPlace
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.settle_counts import settle_counts
from visits.services.kit.stock_word import (
    Amount,
    StockRefused,
    StockWord,
    booked_before,
    refuse_amounts,
    refuse_moment,
    refuse_more_than_is_there,
)


@dataclass(frozen=True)
class Way:
    """From where to where."""

    source: StockPlace
    target: StockPlace


@transaction.atomic
def move_stock(
    *, way: Way, moved: Sequence[Amount], word: StockWord, is_really_there: bool = False
) -> list[StockMovement]:
    """Two lines of the ledger for each: it leaves one place and comes to the other at the same moment.

    The same `uid` again gives what was booked then. MoreThanIsThere where the ledger does not know of so much, unless
    `is_really_there`: then the place goes below nought, which is shown, until it is counted. StockRefused or
    ValidationError say what else to mend.
    """
    scope = way.source.scope
    lock_stock(scope=scope)
    if before := booked_before(scope, word):
        return before
    _refuse(way, moved, word)
    if not is_really_there:
        refuse_more_than_is_there(way.source, moved, word)
    rows = [_leg(each, way, word, is_out) for each in moved for is_out in (True, False)]
    for row in rows:
        row.full_clean()
        row.save()
    touched = {(item.consumable.pk, place.pk) for item in moved for place in (way.source, way.target)}
    settle_counts(scope=scope, touched=touched, since=word.at, noted_at=word.noted_at)
    return rows


def _refuse(way: Way, moved: Sequence[Amount], word: StockWord) -> None:
    if way.source.pk == way.target.pk:
        raise StockRefused("It lies there already: choose two places.")
    refuse_moment(word)
    refuse_amounts(moved, nought=False)


def _leg(each: Amount, way: Way, word: StockWord, is_out: bool) -> StockMovement:
    place = way.source if is_out else way.target
    return StockMovement(
        business_id=place.business_id,
        consumable=each.consumable,
        place=place,
        kind=MovementKind.MOVED.value,
        quantity=-each.quantity if is_out else each.quantity,
        at=word.at,
        lot=each.lot,
        note=word.note.strip(),
        by=word.by,
        noted_at=word.noted_at,
        uid=word.uid,
    )
