"""A trail that was written years ago: nobody can wait for one, so its entries are made older before they are sealed."""

from datetime import timedelta

from django.db import connection
from django.utils import timezone

from tests.factories import wanted
from trimops.audit.domain.digests import entry_digest
from trimops.audit.models import AuditEntry
from trimops.audit.models.audit_locks import put_all_on, take_all_off
from trimops.audit.services.seal_audit import seal_audit

YEAR = timedelta(days=366)


def make_old(house, years):
    """What waits for its seal was written so many years ago, and is sealed; all locks stand afterwards."""
    take_all_off(connection)
    for entry in AuditEntry.objects.within(house.scope).filter(seal=None):
        entry.at -= years * YEAR
        entry.digest = entry_digest(entry.facts)
        entry.save()
    seal_audit(now=timezone.now() - years * YEAR)
    put_all_on(connection)
    return AuditEntry.objects.within(house.scope).count()


def grown(house):
    """Some old entries, and some of today, all sealed; how many are old."""
    old = make_old(house, 12)
    wanted(house.farm)
    seal_audit(now=timezone.now())
    return old
