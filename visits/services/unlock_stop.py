"""A lock taken off."""

from django.db import transaction

from visits.models import PlanLock, Visit


@transaction.atomic
def unlock_stop(*, visit: Visit) -> bool:
    """Whether there was a lock. The plan shown keeps the visit where it is; moving and planning again are free."""
    lock = PlanLock.objects.within(visit.scope).filter(visit=visit).first()
    if lock is None:
        return False
    lock.delete()
    return True
