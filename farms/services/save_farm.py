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
    before = Farm.objects.within(farm.scope).locked().filter(pk=farm.pk).first() if farm.pk else None
    level_changed = before is None or before.hygiene_level != farm.hygiene_level
    if level_changed:
        farm.hygiene_since = at.astimezone(farm.business.zone).date()
    farm.full_clean()
    _count_for_calendars(farm, before, at)
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


def _count_for_calendars(farm: Farm, before: Farm | None, at: datetime) -> None:
    """A calendar that shows its visits must hear that they are elsewhere, or called otherwise (RFC 5546, 2.1.4)."""
    moved = before is None or _place(before) != _place(farm)
    if before is not None:
        farm.place_sequence = before.place_sequence + moved
    if moved or before is None or before.access_notes != farm.access_notes:
        farm.shown_since = at


def _place(farm: Farm) -> tuple[object, ...]:
    return farm.name, farm.address, farm.latitude, farm.longitude
