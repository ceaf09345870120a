"""Every few minutes: an errand for each van that is under way and whose farms want to know of delays."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.scope import Scope
from trimops.tenancy.unscoped import unscoped
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules
from visits.selectors.messages.last_signs import vans_under_way

BEFORE, AFTER = timedelta(hours=14), timedelta(hours=14)
"""No day of a van is longer."""


@transaction.atomic
def look_at_delays(*, at: datetime) -> int:
    """How many vans. A query for each business that has it switched on."""
    with unscoped("the timetable looks at all businesses"):
        rules = [row for row in MessageRules.objects.exclude(switched_on=[]) if row.is_on(MessageKind.LATE)]
    vans = [
        (row.business_id, van)
        for row in rules
        for van in vans_under_way(Scope(row.business_id), at - BEFORE, at + AFTER)
    ]
    for business_id, van in vans:
        enqueue(Job.TELL_DELAYS, business_id, van_id=van)
    return len(vans)
