"""New entries of the trail are taken into the chains of their businesses."""

from collections.abc import Iterable
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Business
from trimops.audit.domain.digests import first_link, next_link
from trimops.audit.models import AuditEntry, AuditSeal
from trimops.audit.selectors.audit_heads import Head, head_of, unsealed_since
from trimops.audit.services.note_heads import note_heads
from trimops.errands.only_one import only_one
from trimops.kernel.scope import Scope

MOST_AT_ONCE = 5_000


def seal_audit(*, now: datetime, business_id: int | None = None) -> int:
    """Seal what was written up to the aware instant `now`, of all businesses or of one; how many entries.

    Two at a time do no harm, and the second does nothing. The new ends of the chains are noted outside the database.
    """
    with only_one("seal the audit trail") as is_mine:
        if not is_mine:
            return 0
        keys = [business_id] if business_id is not None else list(_businesses())
        sealed = {pk: _seal(Scope(pk), now) for pk in keys}
        note_heads(heads={pk: head for pk, (count, head) in sealed.items() if count and head}, at=now)
        return sum(count for count, _ in sealed.values())


def _businesses() -> Iterable[int]:
    # because: one after the other, since the entries are found by business and time, and by time alone by no index
    return Business.objects.order_by("pk").values_list("pk", flat=True)


def _seal(scope: Scope, now: datetime) -> tuple[int, Head | None]:
    count, head, since = 0, head_of(scope), unsealed_since(scope)
    while batch := _batch(scope, since):
        head = _add(scope, head, batch, now)
        count += len(batch)
    return count, head


def _batch(scope: Scope, since: datetime) -> list[tuple[int, str]]:
    rows = AuditEntry.objects.within(scope).filter(at__gte=since, seal=None)
    return list(rows.order_by("id").values_list("id", "digest")[:MOST_AT_ONCE])


@transaction.atomic
def _add(scope: Scope, head: Head | None, batch: Iterable[tuple[int, str]], now: datetime) -> Head:
    position, chain = (head.position, head.chain) if head else (0, first_link(scope.business_id))
    seals = []
    for entry_id, digest in batch:
        position, chain = position + 1, next_link(chain, digest)
        seals.append(
            AuditSeal(
                business_id=scope.business_id,
                position=position,
                entry_id=entry_id,
                chain=chain,
                sealed_at=now,
            )
        )
    AuditSeal.objects.bulk_create(seals, batch_size=500)
    return Head(position, chain)
