"""Secret addresses of calendar feeds."""

from dataclasses import dataclass
from datetime import datetime

from django.db import transaction

from farms.models import Farm
from trimops.accounts.models import Business, User
from trimops.kernel.secret_link import hash_of, new_secret
from trimops.tenancy.same_business import require_same_business
from visits.models import CalendarAddress, Van


@dataclass(frozen=True)
class NewAddress:
    """The stored row and the secret, which is shown once and never stored."""

    row: CalendarAddress
    secret: str


@transaction.atomic
def make_calendar_address(
    *, business: Business, name: str, at: datetime, by: User, shows: Van | Farm | None = None
) -> NewAddress:
    """An address that shows a van's visits, a farm's, or the whole business's. 256 bits of chance."""
    secret = new_secret()
    row = CalendarAddress(
        business=business,
        name=name,
        secret_hash=hash_of(secret),
        van=shows if isinstance(shows, Van) else None,
        farm=shows if isinstance(shows, Farm) else None,
        made_at=at,
        made_by=by,
    )
    require_same_business(row, row.van, row.farm)
    row.full_clean()
    row.save()
    return NewAddress(row, secret)
