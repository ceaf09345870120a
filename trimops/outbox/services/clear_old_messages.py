"""What went long ago need not be kept word for word, and at last not at all."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.models import Outgoing, OutgoingPart

WORDS_KEPT = timedelta(days=30)
ROWS_KEPT = timedelta(days=400)
"""Longer than a year: who was sent which invoice is asked when the books of the year are closed."""
AT_ONCE = 200
"""Rows in one transaction; papers may hang on them."""
OVER = [state.value for state in OutgoingState if state not in (OutgoingState.WAITING, OutgoingState.GOING)]


def clear_old_messages(*, scope: Scope, at: datetime, before: datetime | None = None) -> tuple[int, int]:
    """Empty text and papers of messages that went a month before the aware instant `at`, and drop those that are over
    and were written before `before` (without: 400 days ago), with their log; how many of each."""
    emptied = dropped = 0
    while count := _empty_some(scope, at - WORDS_KEPT):
        emptied += count
    while count := _drop_some(scope, before or at - ROWS_KEPT):
        dropped += count
    return emptied, dropped


@transaction.atomic
def _empty_some(scope: Scope, before: datetime) -> int:
    rows = Outgoing.objects.within(scope).filter(state=OutgoingState.WENT.value, went_at__lt=before)
    ids = list(rows.exclude(body="").order_by("went_at").values_list("pk", flat=True)[:AT_ONCE])
    OutgoingPart.objects.within(scope).filter(outgoing_id__in=ids).delete()
    Outgoing.objects.within(scope).filter(pk__in=ids).update(body="", secret="")
    return len(ids)


@transaction.atomic
def _drop_some(scope: Scope, before: datetime) -> int:
    rows = Outgoing.objects.within(scope).filter(state__in=OVER, written_at__lt=before)
    ids = list(rows.order_by("written_at").values_list("pk", flat=True)[:AT_ONCE])
    Outgoing.objects.within(scope).filter(pk__in=ids).delete()
    return len(ids)
