"""Somebody took all of a farm's data out."""

import logging
from datetime import datetime

from django.db import transaction

from farms.models import Farm
from farms.selectors.erasures import open_erasure
from trimops.accounts.models import User

log = logging.getLogger(__name__)


@transaction.atomic
def note_data_taken(*, farm: Farm, at: datetime, by: User) -> bool:
    """A line in the log; and, where the farm has asked to be erased, one in that wish, which is kept (True then)."""
    log.info("data of farm %s taken out by person %s", farm.pk, by.pk)
    wish = open_erasure(farm.scope, farm)
    if wish is None:
        return False
    row = wish.locked()
    row.outcome = {
        **row.outcome,
        "taken out": [*row.outcome.get("taken out", []), {"at": at.isoformat(), "by": by.pk}],
    }
    row.save()
    return True
