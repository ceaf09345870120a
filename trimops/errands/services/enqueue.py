"""A background job is asked for."""

from datetime import datetime
from functools import partial

from django.db import transaction
from django.db.models.functions import Now

from trimops.errands.models import Errand
from trimops.errands.services.hand_out import hand_out
from trimops.jobs import Job
from trimops.watch.doing import who_does_it


def enqueue(job: Job, business_id: int, /, *, not_before: datetime | None = None, **ids: int) -> Errand:
    """Have `job` done with `ids` for a business. It is kept in this transaction, so it is done if that commits and
    never if it rolls back; it begins after the commit, at `not_before` (aware) at the earliest.

    That it cannot be started at once, or fails, costs the caller nothing: it is tried again by the timetable.
    """
    errand = Errand(business_id=business_id, job=job.value, ids=dict(ids), asked_by_id=who_does_it().by)
    if not_before is not None:
        errand.due_at = not_before
    else:
        # What the commit hands out the next tick need not hand out as well; it looks after what was lost.
        errand.handed_out_at = Now()
    errand.save(force_insert=True)
    if not_before is None:
        transaction.on_commit(partial(hand_out, job=job.value, errand_id=errand.pk))
    return errand
