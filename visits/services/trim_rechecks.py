"""A foot that was looked at closes its open re-check; what was found on it may open the next."""

from collections.abc import Sequence

from django.db.models import Q

from trimops.kernel.scope import Scope
from visits.domain.recheck_due import RecheckDue, RecheckFigures, StandingBlock, rechecks_for
from visits.models import Recheck
from visits.services.stored_cow import StoredCow

COLUMNS = ("cause", "what", "due_from", "due_until", "closed_on", "closed_by_trim_id", "closed_because")


class RechecksOfCows:
    """The re-checks of some cows as if `trims` had never been; then each trim is noted in turn, then `save`.

    At most one is open per cow and foot, before and after.
    """

    def __init__(self, scope: Scope, trims: Sequence[StoredCow], figures: RecheckFigures) -> None:
        self.scope, self.figures = scope, figures
        keys = [cow.trim.pk for cow in trims]
        said_by_them = Q(from_trim_id__in=keys) | Q(closed_by_trim_id__in=keys)
        rows = Recheck.objects.within(scope).filter(cow_id__in={cow.trim.cow_id for cow in trims})
        found = list(rows.filter(Q(closed_on__isnull=True) | said_by_them).order_by("pk"))
        self.before = {row.pk: _said(row) for row in found}
        undone = set(keys)
        # Kept for the trim to take up again: a visit may be planned for it, the farm may have looked at the foot.
        self.spare = {(row.from_trim_id, row.foot): row for row in found if row.from_trim_id in undone}
        self.rows = [row for row in found if row.from_trim_id not in undone]
        for row in found:
            if row.closed_by_trim_id in undone:
                row.closed_on, row.closed_by_trim_id, row.closed_because = None, None, ""

    def note(self, cow: StoredCow, standing: Sequence[StandingBlock]) -> None:
        """Close what the lifted feet were due for, open what they are due for next. `standing`: blocks from before."""
        seen = {foot.foot.value for foot in cow.entry.feet}
        for row in self.rows:
            if row.cow_id == cow.trim.cow_id and row.foot in seen and row.closed_on is None:
                row.closed_on, row.closed_by_trim_id = cow.day, cow.trim.pk
                row.closed_because = "looked at"
        for due in rechecks_for(cow.entry, cow.day, self.figures, standing):
            self._open(cow, due)

    def save(self) -> None:
        """What closes first, so that no foot has two open even for a moment."""
        rechecks = Recheck.objects.within(self.scope)
        if self.spare:
            rechecks.filter(pk__in=[row.pk for row in self.spare.values()]).delete()
        changed = [row for row in self.rows if row.pk is not None and _said(row) != self.before[row.pk]]
        columns = [name.removesuffix("_id") for name in COLUMNS]
        for is_closed in (True, False):
            rechecks.bulk_update(
                [row for row in changed if (row.closed_on is not None) is is_closed], columns
            )
        Recheck.objects.bulk_create([row for row in self.rows if row.pk is None])

    def _open(self, cow: StoredCow, due: RecheckDue) -> None:
        row = self.spare.pop((cow.trim.pk, due.foot.value), None) or Recheck(
            business_id=cow.trim.business_id,
            farm_id=cow.trim.visit.farm_id,
            cow_id=cow.trim.cow_id,
            foot=due.foot.value,
            from_trim=cow.trim,
        )
        row.cause, row.what = due.cause.value, due.what[:120]
        row.due_from, row.due_until = due.due_from, due.due_until
        self.rows.append(row)


def _said(row: Recheck) -> tuple[object, ...]:
    return tuple(getattr(row, name) for name in COLUMNS)
