"""The owner says how long things are kept."""

from collections.abc import Mapping
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Business, User
from trimops.kernel.scope import Scope
from trimops.portal.models import RetentionRules


@transaction.atomic
def save_retention(
    *, business: Business, periods: Mapping[str, int], at: datetime, by: User
) -> RetentionRules:
    """Keep the periods, by their names in RetentionRules; the next night goes by them. ValidationError names what to
    mend, a period below its least among it."""
    rows = RetentionRules.objects.within(Scope(business.pk))
    row = rows.select_for_update().first() or RetentionRules(business=business)
    for name, period in periods.items():
        setattr(row, name, period)
    row.changed_at, row.changed_by = at, by
    row.full_clean()
    row.save()
    return row
