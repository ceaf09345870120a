"""A knife or disc is put on the list, or its particulars are mended."""

from datetime import datetime, time

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.errors import FieldRefused
from visits.domain.kit.blade_kinds import BladeState
from visits.models import Blade, BladeEvent


class BladeDayRefused(FieldRefused):
    """It cannot have been bought on that day."""

    code = "blade_day_refused"


@transaction.atomic
def save_blade(*, blade: Blade, was_used: bool = False, at: datetime, by: User) -> Blade:
    """Keep the blade. A new one begins as bought, or as in use if it `was_used` before it was put on the list (then
    nobody knows how much its first edge has cut). BladeDayRefused for a day to come; ValidationError says what else.
    """
    zone = blade.business.zone
    if blade.bought_on and blade.bought_on > local_day(at, zone):
        raise BladeDayRefused("bought_on", "This day is still to come: give the day on which you bought it.")
    is_new = blade.pk is None
    if is_new:
        blade.state = BladeState.IN_USE.value if was_used else BladeState.BOUGHT.value
        blade.state_since = at_local(blade.bought_on, time(0), zone) if blade.bought_on else at
    blade.full_clean()
    blade.save()
    if is_new:
        BladeEvent.objects.create(
            business_id=blade.business_id, blade=blade, state=blade.state, at=blade.state_since, by=by
        )
    return blade
