"""A message that waits is begun now: by the errand it has, or by a new one where that is gone."""

from datetime import datetime
from functools import partial

from django.db import transaction

from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.errands.services.enqueue import enqueue
from trimops.errands.services.hand_out import hand_out
from trimops.jobs import Job
from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.models import Outgoing

SENDING_JOBS = (Job.SEND_OUTGOING.value, Job.SEND_ALARM.value)


def sending_job(row: Outgoing) -> Job:
    """That somebody who works alone is missed stands behind no other mail."""
    return Job.SEND_ALARM if row.topic == Topic.WATCH else Job.SEND_OUTGOING


@transaction.atomic
def start_sending(*, row: Outgoing, at: datetime) -> None:
    """Not a second errand beside the first: both would come again at each pause."""
    errands = Errand.objects.within(row.scope).filter(
        job__in=SENDING_JOBS, ids={"outgoing_id": row.pk}, state=ErrandState.WAITING.value
    )
    errand = errands.first()
    if errand is None:
        enqueue(sending_job(row), row.business_id, outgoing_id=row.pk)
        return
    errands.filter(pk=errand.pk).update(due_at=at, handed_out_at=None)
    transaction.on_commit(partial(hand_out, job=errand.job, errand_id=errand.pk))
