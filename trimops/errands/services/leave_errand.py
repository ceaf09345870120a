"""Somebody looked at an errand that got stuck, and nothing is to be done about it."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.errands.services.try_again import stuck


@transaction.atomic
def leave_errand(*, errand: Errand, at: datetime, by: User) -> Errand:
    """It counts as done; who left it is kept with what went wrong. NotStuck where it is not stuck any more."""
    row = stuck(errand)
    row.state, row.ended_at = ErrandState.DONE.value, at
    row.last_words = f"Left by {by}. {row.last_words}"[:500]
    row.save(update_fields=["state", "ended_at", "last_words"])
    return row
