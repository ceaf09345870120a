"""A calendar address is closed for good."""

from datetime import datetime

from django.db import transaction

from visits.models import CalendarAddress


@transaction.atomic
def revoke_calendar_address(*, address: CalendarAddress, at: datetime) -> CalendarAddress:
    """From now on the address answers 404; closing it twice changes nothing."""
    row = address.locked()
    if row.revoked_at is None:
        row.revoked_at = at
        row.save()
    return row
