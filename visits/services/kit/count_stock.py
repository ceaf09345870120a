"""Somebody counted what lies at a place."""

from collections.abc import Sequence

from django.db import transaction

from visits.models import StockCount, StockPlace
from visits.services.kit.lock_stock import lock_stock
from visits.services.kit.settle_counts import settle_counts
from visits.services.kit.stock_word import Amount, StockWord, refuse_amounts, refuse_moment


@transaction.atomic
def count_stock(*, place: StockPlace, counted: Sequence[Amount], word: StockWord) -> list[StockCount]:
    """Keep what was counted of each thing, nought too, and write what the ledger lacks or has too much.

    At `word.at` so much lay there, after all that is dated up to then; it stays true whatever is heard later. What was
    not counted is not named. The same `uid` again gives the counts of then. StockRefused or ValidationError say what
    to mend.
    """
    lock_stock(scope=place.scope)
    before = list(StockCount.objects.within(place.scope).filter(uid=word.uid).order_by("pk"))
    if before:
        return before
    refuse_moment(word)
    refuse_amounts(counted, nought=True)
    rows = [_count(place, each, word) for each in counted]
    for row in rows:
        row.full_clean()
        row.save()
    touched = {(each.consumable.pk, place.pk) for each in counted}
    settle_counts(scope=place.scope, touched=touched, since=word.at, noted_at=word.noted_at)
    return rows


def _count(place: StockPlace, each: Amount, word: StockWord) -> StockCount:
    return StockCount(
        business_id=place.business_id,
        consumable=each.consumable,
        place=place,
        counted=each.quantity,
        at=word.at,
        note=word.note.strip(),
        by=word.by,
        noted_at=word.noted_at,
        uid=word.uid,
    )
