"""Everything that waits to go is tried now."""

from datetime import datetime

from django.db import transaction

from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import OutgoingState, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.services.send_outgoing import look_again
from trimops.outbox.services.start_sending import start_sending

AT_ONCE = 200
"""So that a broker whose workers are away is not filled with the same jobs."""


def try_waiting(
    *, scope: Scope, at: datetime, all_now: bool = True, topics: frozenset[Topic] = frozenset(Topic)
) -> int:
    """Begin what waits, the oldest first; how many. `all_now`: also what would wait a while longer after a try in vain;
    never what waits for its hour. A message goes once however often it is begun."""
    if all_now:
        look_again()
    rows = Outgoing.objects.within(scope).filter(
        state=OutgoingState.WAITING.value, topic__in=[topic.value for topic in topics]
    )
    begun = 0
    for pk in rows.order_by("written_at", "id").values_list("pk", flat=True)[:AT_ONCE]:
        begun += _begin(scope, pk, at, all_now)
    return begun


@transaction.atomic
def _begin(scope: Scope, pk: int, at: datetime, all_now: bool) -> bool:
    row = Outgoing.objects.within(scope).locked().filter(pk=pk, state=OutgoingState.WAITING.value).first()
    if row is None or (row.not_before is not None and row.not_before > at):
        return False
    if row.next_try_at is not None and row.next_try_at > at:
        if not all_now:
            return False
        row.next_try_at = at
        row.save(update_fields=["next_try_at"])
    start_sending(row=row, at=at)
    return True
