"""Somebody has mended what kept an errand from being done, and has it tried again."""

from functools import partial

from django.db import transaction
from django.db.models.functions import Now

from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.errands.services.hand_out import hand_out
from trimops.kernel.errors import RuleBroken


class NotStuck(RuleBroken):
    """Somebody else had it tried again, or left it."""

    code = "errand_not_stuck"


@transaction.atomic
def try_again(*, errand: Errand) -> Errand:
    """It begins after the commit, with all its tries before it. NotStuck where it is under way, done or left by now."""
    row = stuck(errand)
    row.state, row.tries, row.ended_at = ErrandState.WAITING.value, 0, None
    row.due_at = row.handed_out_at = Now()
    row.save(update_fields=["state", "tries", "ended_at", "due_at", "handed_out_at"])
    transaction.on_commit(partial(hand_out, job=row.job, errand_id=row.pk, is_daily=row.day is not None))
    return row


def stuck(errand: Errand) -> Errand:
    """The errand read anew and locked. NotStuck where it is not stuck any more."""
    row = errand.locked()
    if row.state != ErrandState.STUCK:
        raise NotStuck("It is not stuck any more: somebody had it tried again, or left it.")
    return row
