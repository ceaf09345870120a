"""Blocks and re-checks of cows follow from their trims, told in the order of the trims."""

from collections.abc import Sequence

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.recheck_due import RecheckFigures
from visits.models import Trim, Visit
from visits.selectors.trim_entries import entries_of
from visits.services.stored_cow import StoredCow, in_order
from visits.services.trim_blocks import BlocksOfCows
from visits.services.trim_rechecks import RechecksOfCows


def follow_feet(*, visit: Visit, cows: Sequence[StoredCow], figures: RecheckFigures) -> None:
    """Bring blocks and re-checks to what these trims of the visit say now.

    A cow may have been trimmed again since (her words came late, from a phone that lay in the van): the later trims are
    told once more after it, so that the outcome is the same as if all had come in their order.
    """
    told = in_order([*cows, *_later(visit, cows)])
    blocks = BlocksOfCows(visit.scope, told, figures)
    rechecks = RechecksOfCows(visit.scope, told, figures)
    for cow in told:
        blocks.note(cow)
        rechecks.note(cow, blocks.standing(cow))
    blocks.save()
    rechecks.save()


def _later(visit: Visit, cows: Sequence[StoredCow]) -> list[StoredCow]:
    """What was put down of the same cows on other visits since the earliest of these trims."""
    since = min(cow.since for cow in cows)
    rows = Trim.objects.within(Scope(visit.business_id)).select_related("visit").exclude(visit=visit)
    trims = list(rows.filter(cow_id__in=[cow.trim.cow_id for cow in cows], recorded_at__gte=since))
    entries = entries_of(visit.scope, trims)
    zone = visit.business.zone
    return [
        StoredCow(trim, entries[trim.pk], local_day(trim.recorded_at, zone), trim.recorded_at)
        for trim in trims
    ]
