"""The vet's link was opened."""

from datetime import datetime, timedelta

from django.db import transaction

from farms.models import VetPass

AGAIN_AFTER = timedelta(minutes=10)
"""A reader who goes from page to page has opened the link once."""


@transaction.atomic
def note_vet_opened(*, vet_pass: VetPass, at: datetime) -> bool:
    """Keep when it was last opened; False where that was a moment ago, or the pass is over."""
    row = vet_pass.locked()
    if not row.is_open(at) or (row.opened_at is not None and at - row.opened_at < AGAIN_AFTER):
        return False
    row.opened_at = at
    row.save()
    return True
