"""What is older than the business keeps its trail goes, and a cut stands in its place."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from django.db import connections, router, transaction

from trimops.audit.domain.cut_line import cut_line
from trimops.audit.domain.digests import first_link, next_link
from trimops.audit.models import AuditCut, AuditEntry, AuditSeal
from trimops.errands.only_one import only_one
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope

MOST_AT_ONCE = 5_000


class TrailBroken(RuleBroken):
    """What would go is not as it was written; it stays until somebody has looked at it."""

    code = "trail_broken"


@dataclass(frozen=True)
class _Part:
    """The oldest part of a trail: from the entry after `start` up to `position`, where the chain is `chain`."""

    start: int
    position: int
    chain: str


def cut_audit(*, scope: Scope, years: int, at: datetime) -> int:
    """Cut what was written before the month of `years` years ago, seen from the aware instant `at`; how many entries.

    Only from the beginning on, and only what is sealed. TrailBroken where that part does not follow any more,
    ValueError for a period that is too short. Two at a time do no harm, and the second does nothing.
    """
    before, count = cut_line(at, years), 0
    with only_one(f"cut the audit trail of {scope.business_id}") as is_mine:
        while is_mine and (gone := _cut(scope, before, years, at)):
            count += gone
    return count


@transaction.atomic
def _cut(scope: Scope, before: datetime, years: int, at: datetime) -> int:
    part = _oldest(scope, before)
    count = part.position - part.start
    if count:
        AuditCut(
            business_id=scope.business_id,
            position=part.position,
            chain=part.chain,
            entries=count,
            before=before,
            years=years,
            cut_at=at,
        ).save()
        _take_away(scope.business_id, part.position)
    return count


def _oldest(scope: Scope, before: datetime) -> _Part:
    """What is older than `before` without a gap, `MOST_AT_ONCE` at most; each link is reckoned anew."""
    last = AuditCut.objects.within(scope).order_by("-position").first()
    start, chain = (last.position, last.chain) if last else (0, first_link(scope.business_id))
    position = start
    for seal_position, seal_chain, digest, written_at in _links(scope):
        if written_at >= before:
            break
        position, chain = position + 1, next_link(chain, digest)
        if (seal_position, seal_chain) != (position, chain):
            raise TrailBroken(
                f"The trail of business {scope.business_id} is not as it was written, position {position}: "
                "nothing of it was cut. Run verify_audit."
            )
    return _Part(start, position, chain)


def _links(scope: Scope) -> Iterator[tuple[int, str, str, datetime]]:
    rows = AuditSeal.objects.within(scope).order_by("position")[:MOST_AT_ONCE]
    yield from rows.values_list("position", "chain", "entry__digest", "entry__at").iterator(chunk_size=500)


def _take_away(business: int, position: int) -> None:
    """Straight SQL: the seals that lead to the entries go after them, which the database checks at the commit."""
    entries, seals = AuditEntry._meta.db_table, AuditSeal._meta.db_table
    covered = "business_id = %s AND position <= %s"
    with connections[router.db_for_write(AuditEntry)].cursor() as cursor:
        cursor.execute(
            f"DELETE FROM {entries} WHERE business_id = %s AND id IN (SELECT entry_id FROM {seals} WHERE {covered})",
            [business, business, position],
        )
        cursor.execute(f"DELETE FROM {seals} WHERE {covered}", [business, position])
