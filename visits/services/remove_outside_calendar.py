"""An outside calendar is taken off a van's list."""

from django.db import transaction

from visits.models import OutsideCalendar


@transaction.atomic
def remove_outside_calendar(*, calendar: OutsideCalendar) -> None:
    """With all it kept the van in for. What is read of it at this moment is not kept any more."""
    calendar.locked().delete()
