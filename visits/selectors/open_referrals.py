"""What is still the vet's."""

from datetime import datetime, timedelta

from django.db.models import Exists, OuterRef

from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from visits.models import Referral, Trim

VET_DAYS = 42


def open_referrals(scope: Scope, now: datetime) -> TenantQuerySet[Referral]:
    """Of the last six weeks, at cows that were not at the crush again since; the newest first."""
    later = Trim.objects.within(scope).filter(
        cow_id=OuterRef("trim__cow_id"), recorded_at__gt=OuterRef("trim__recorded_at")
    )
    since = now - timedelta(days=VET_DAYS)
    rows = Referral.objects.within(scope).filter(
        trim__recorded_at__gte=since, trim__taken_back_at__isnull=True
    )
    return rows.filter(~Exists(later)).select_related("trim__cow").order_by("-trim__recorded_at", "id")
