"""A foot that was looked at closes its open re-check; what was found on it may open the next."""

from datetime import date

from visits.domain.actions import BlockKind
from visits.domain.crush_entry import CowEntry
from visits.domain.feet import Claw, Foot
from visits.domain.recheck_due import RecheckDue, RecheckFigures, StandingBlock, rechecks_for
from visits.models import Block, Recheck, Trim


def note_rechecks(trim: Trim, entry: CowEntry, day: date, figures: RecheckFigures) -> None:
    """At most one open re-check per cow and foot, before and after. Call once the blocks of the trim are noted.

    A block that stays on a lifted foot keeps its own days, whatever else the foot was looked at for.
    """
    _undo(trim)
    seen = [foot.foot.value for foot in entry.feet]
    open_now = Recheck.objects.within(trim.scope).open().filter(cow_id=trim.cow_id, foot__in=seen)
    open_now.update(closed_on=day, closed_by_trim=trim, closed_because="looked at")
    for due in rechecks_for(entry, day, figures, _standing(trim)):
        _open(trim, due)


def _standing(trim: Trim) -> list[StandingBlock]:
    """Blocks on this cow from before, still on."""
    rows = Block.objects.within(trim.scope).filter(cow_id=trim.cow_id, off_on__isnull=True)
    return [
        StandingBlock(Foot(row.foot), Claw(row.claw), BlockKind(row.kind), row.put_on)
        for row in rows.exclude(put_on_by=trim)
    ]


def _undo(trim: Trim) -> None:
    """Forget what an earlier version of this very trim opened and closed."""
    rows = Recheck.objects.within(trim.scope)
    rows.filter(from_trim=trim).delete()
    rows.filter(closed_by_trim=trim).update(closed_on=None, closed_by_trim=None, closed_because="")


def _open(trim: Trim, due: RecheckDue) -> None:
    recheck = Recheck(
        business_id=trim.business_id,
        farm_id=trim.cow.farm_id,
        cow_id=trim.cow_id,
        foot=due.foot.value,
        cause=due.cause.value,
        what=due.what[:120],
        due_from=due.due_from,
        due_until=due.due_until,
        from_trim=trim,
    )
    recheck.full_clean()
    recheck.save()
