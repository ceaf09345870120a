"""The farm closes its vet's link."""

from datetime import datetime

from django.db import transaction

from farms.models import VetPass


@transaction.atomic
def close_vet_pass(*, vet_pass: VetPass, at: datetime) -> VetPass:
    """From now on the link answers 404; closing it twice changes nothing."""
    row = vet_pass.locked()
    if row.closed_at is None:
        row.closed_at = at
        row.save()
    return row
