"""A kept herd list is applied: what the preview showed is done, once."""

from datetime import datetime

from django.db import transaction

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HerdRow
from farms.domain.herd_plan import HerdPlan
from farms.domain.identity_kind import IdentityKind
from farms.models import Cow, HerdImport
from farms.selectors.herd_plan import herd_plan_of
from farms.services.save_cow import save_cow

DATES = ("born_on", "calved_on", "calving_due", "dry_off_due", "left_on")


@transaction.atomic
def apply_herd_list(*, herd_import: HerdImport, at: datetime) -> HerdPlan:
    """Add and change the cows of the list; rows with faults are left out. A second time finds nothing to do."""
    row = herd_import.locked()
    row.farm.locked()
    plan = herd_plan_of(row)
    for new in plan.new:
        cow = Cow(business=row.business, farm=row.farm, number=new.number)
        cow.status = (new.status or CowStatus.MILKING).value
        _fill(cow, new, at)
    known = (
        Cow.objects.within(row.scope)
        .select_related("business")
        .in_bulk([change.cow_id for change in plan.changed])
    )
    for change in plan.changed:
        _fill(known[change.cow_id], change.row, at)
    row.applied_at = row.applied_at or at
    row.outcome = {
        "new": len(plan.new),
        "changed": len(plan.changed),
        "unchanged": plan.unchanged,
        "refused": len(plan.refused),
    }
    row.save()
    return plan


def _fill(cow: Cow, row: HerdRow, at: datetime) -> None:
    cow.number = row.number
    cow.status = row.status.value if row.status else cow.status
    for name in DATES:
        if getattr(row, name) is not None:
            setattr(cow, name, getattr(row, name))
    given = {IdentityKind.OFFICIAL_TAG: row.official_tag, IdentityKind.ELECTRONIC_ID: row.electronic_id}
    identities = {kind: value for kind, value in given.items() if value}
    save_cow(cow=cow, identities=identities, lactation=row.lactation, at=at)
