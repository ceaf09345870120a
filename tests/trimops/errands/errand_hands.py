"""What tests of errands need: a job whose work is theirs, and a look at the rows."""

from datetime import datetime, timedelta

from django.utils import timezone

from tests.factories import make_business
from trimops.accounts.models import Business
from trimops.errands import kinds
from trimops.errands.kinds import ErrandKind
from trimops.errands.load_tasks import load_tasks
from trimops.errands.models import Errand
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.tenancy.unscoped import unscoped

JOB = Job.DRAFT_INVOICE


def set_work(monkeypatch, work, alone="", job=JOB):
    """What is done for a job in this test: `work` is handed how many times it was called; each call's ids are kept."""
    load_tasks()
    calls = []

    def noted(**ids):
        calls.append(ids)
        return work(len(calls))

    monkeypatch.setitem(kinds.KINDS, job, ErrandKind(noted, 60, alone))
    return calls


def now_of(errand) -> Errand:
    with unscoped("a test looks"):
        return Errand.objects.get(pk=errand.pk)


def all_errands() -> list[Errand]:
    with unscoped("a test looks"):
        return list(Errand.objects.order_by("pk"))


def written(business: Business | None = None, **fields) -> Errand:
    """An errand in the table, due since an hour; `fields` say how else it stands."""
    errand = Errand(business=business or make_business(), job=fields.pop("job", JOB).value)
    for name, value in {"due_at": timezone.now() - timedelta(hours=1), **fields}.items():
        setattr(errand, name, value)
    errand.save()
    return now_of(errand)


def left_waiting(business: Business | None = None, not_before: datetime | None = None, **ids: int) -> Errand:
    """One that nobody begins by itself."""
    pk = (business or make_business()).pk
    return enqueue(JOB, pk, not_before=not_before or timezone.now(), **(ids or {"visit_id": 7}))
