"""A farm is put on the list, or what is known of it is mended."""

from datetime import datetime

from django.db import transaction

from farms.models import Farm, HygieneChange
from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User


@transaction.atomic
def save_farm(*, farm: Farm, at: datetime, by: User) -> Farm:
    """Keep the farm as given; a change of its hygiene level is written to its history with the reason."""
    refuse_erased(farm=farm)
    before = Farm.objects.within(farm.scope).filter(pk=farm.pk).first() if farm.pk else None
    level_changed = before is None or before.hygiene_level != farm.hygiene_level
    if level_changed:
        farm.hygiene_since = at.astimezone(farm.business.zone).date()
    farm.full_clean()
    farm.save()
    if level_changed and farm.hygiene_since is not None:
        change = HygieneChange(
            business_id=farm.business_id,
            farm=farm,
            level=farm.hygiene_level,
            reason=farm.hygiene_reason or "as first told",
            since=farm.hygiene_since,
            changed_at=at,
            changed_by=by,
        )
        change.full_clean()
        change.save()
    return farm
