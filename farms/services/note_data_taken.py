"""Somebody took all of a farm's data out."""

import logging
from datetime import datetime

from django.db import transaction

from farms.models import Farm
from farms.selectors.erasures import open_erasure
from trimops.accounts.models import User
from trimops.audit.services.note_handed_out import note_handed_out

log = logging.getLogger(__name__)


@transaction.atomic
def note_data_taken(*, farm: Farm, at: datetime, by: User) -> bool:
    """A line in the log, an entry in the trail of changes; and one in the farm's wish to be erased, if there is one.

    True where there is: that wish is kept with what was taken out.
    """
    note_handed_out(row=farm, words="everything", at=at)
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
