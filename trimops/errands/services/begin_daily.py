"""What a business has done once a day is begun, when its own clock says so."""

import logging
from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from trimops.accounts.models import Business
from trimops.errands.domain.due_day import due_day
from trimops.errands.models import Errand
from trimops.jobs import DAILY, Job
from trimops.kernel.clock import at_local
from trimops.tenancy.unscoped import unscoped

log = logging.getLogger(__name__)

AT_ONCE = 1000


def begin_daily(*, now: datetime) -> int:
    """An errand for each business and daily job whose time has come, unless it has one for that day; how many.

    One errand a day by a constraint, so two at once, and an hour that the clocks repeat, begin nothing twice. A
    business opened after the time has come waits for the next day. Its number of queries grows with the zones alone.
    """
    begun = 0
    for name in Business.objects.order_by().values_list("timezone", flat=True).distinct():
        if (zone := _zone(name)) is None:
            continue
        for job, clock in DAILY.items():
            begun += _begin(job, clock, zone, due_day(now, clock, zone))
    return begun


def _zone(name: str) -> ZoneInfo | None:
    """None for one that this machine does not know (any more): the nights of all others come all the same."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError):
        log.error("no such zone of time: %s; nothing daily is done for its businesses", name)
        return None


def _begin(job: Job, clock: time, zone: ZoneInfo, day: date) -> int:
    since = at_local(day, clock, zone).astimezone(UTC)
    with unscoped("what is due in a zone is due for all its businesses"):
        done = Errand.objects.filter(job=job.value, day__gte=day).values("business_id")
        rows = Business.objects.filter(timezone=zone.key, created_at__lt=since).exclude(pk__in=done)
        ids = list(rows.order_by("id").values_list("id", flat=True))
        errands = [Errand(business_id=pk, job=job.value, ids={"business_id": pk}, day=day) for pk in ids]
        Errand.objects.bulk_create(errands, batch_size=AT_ONCE, ignore_conflicts=True)
    return len(ids)
