"""Before the words of a farm's visits go: a blade that was said broken there stays out of use."""

from django.db import transaction

from farms.models import Farm
from trimops.kernel.scope import Scope
from visits.domain.kit.blade_kinds import BladeFault, BladeState, TurnPart
from visits.models import BladeEvent, BladeSaid


@transaction.atomic
def keep_faults(*, farm: Farm) -> None:
    """Write as the business's own word what was said cracked or chipped at the farm; the farm is not named in it.

    The turns at the crush are the farm's and are erased, and a blade's state is told from what is left.
    """
    broken = [part.value for part in TurnPart if part.is_out]
    said = BladeSaid.objects.within(Scope(farm.business_id)).filter(turn__visit__farm=farm, part__in=broken)
    BladeEvent.objects.bulk_create(
        BladeEvent(
            business_id=row.business_id,
            blade_id=row.blade_id,
            state=BladeState.OUT_OF_USE,
            fault=BladeFault(row.part),
            at=row.turn.at,
            by_id=row.turn.by_id,
        )
        for row in said.select_related("turn").order_by("turn__at", "pk")
    )
