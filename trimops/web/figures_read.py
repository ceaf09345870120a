"""Figures that lie in the database: read at the moment they are asked for, over all businesses, without naming one."""

import logging
from collections.abc import Callable
from datetime import datetime

from django.db import DatabaseError, InterfaceError, connection
from django.db.models import Count, Min, Q
from django.utils import timezone

from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.models import Outgoing
from trimops.tenancy.unscoped import unscoped
from trimops.watch.figures import Gauge

ON_THE_WAY = (OutgoingState.WAITING.value, OutgoingState.GOING.value)

log = logging.getLogger(__name__)


def gauges_now() -> list[Gauge]:
    """All of them; with a database that does not answer, or has not all tables yet, those that can be read."""
    if not is_database_up():
        return [Gauge("trimops_database_up", DATABASE_UP, 0)]
    now = timezone.now()
    up = Gauge("trimops_database_up", DATABASE_UP, 1)
    return [up, *_read(lambda: errands_now(now)), *_read(messages_now)]


def _read(gauges: Callable[[], list[Gauge]]) -> list[Gauge]:
    try:
        return gauges()
    except DatabaseError:
        log.warning("figures not read", exc_info=True)
        return []


DATABASE_UP = "1 where the database answers"


def is_database_up() -> bool:
    try:
        with connection.cursor() as cursor:
            cursor.execute("SELECT 1")
    except (DatabaseError, InterfaceError):
        return False
    return True


def errands_now(now: datetime) -> list[Gauge]:
    """Errands whose time has come and that wait, the age of the oldest in seconds, and those a person must look at."""
    is_due = Q(state=ErrandState.WAITING.value, due_at__lte=now)
    with unscoped("figures for whoever runs the site"):
        found = Errand.objects.exclude(state=ErrandState.DONE.value).aggregate(
            waiting=Count("pk", filter=is_due),
            oldest=Min("due_at", filter=is_due),
            under_way=Count("pk", filter=Q(state=ErrandState.UNDER_WAY.value)),
            stuck=Count("pk", filter=Q(state=ErrandState.STUCK.value)),
        )
    age = (now - found["oldest"]).total_seconds() if found["oldest"] else 0.0
    return [
        Gauge(
            "trimops_errands_waiting",
            "Errands whose time has come and that nobody has begun",
            found["waiting"],
        ),
        Gauge("trimops_errands_oldest_seconds", "How long the oldest of them has waited", age),
        Gauge("trimops_errands_under_way", "Errands somebody is at", found["under_way"]),
        Gauge("trimops_errands_stuck", "Errands tried in vain, that a person must look at", found["stuck"]),
    ]


def messages_now() -> list[Gauge]:
    """Messages that wait to go, and those that did not go and that a person must look at."""
    with unscoped("figures for whoever runs the site"):
        found = Outgoing.objects.filter(state__in=(*ON_THE_WAY, OutgoingState.FAILED.value)).aggregate(
            waiting=Count("pk", filter=Q(state__in=ON_THE_WAY)),
            failed=Count("pk", filter=Q(state=OutgoingState.FAILED.value)),
        )
    return [
        Gauge("trimops_messages_waiting", "Messages that wait to go or are going", found["waiting"]),
        Gauge("trimops_messages_failed", "Messages that did not go", found["failed"]),
    ]
