"""How an app's `tasks.py` says what is done for a job.

    @does(Job.BOOK_RECHECKS)
    def book_rechecks_task(visit_id: int) -> None: ...

The function may run twice and must do its work once. What it raises is tried again after a growing pause; `TryLater`
says when itself; `RuleBroken` is not tried again, since it would be refused again.
"""

from collections.abc import Callable

from celery import shared_task
from django.db import connection

from trimops.errands.kinds import EXTRA_SECONDS, KINDS, ErrandKind
from trimops.errands.services.run_errand import run_errand
from trimops.jobs import Job

Work = Callable[..., None]


def does(job: Job, *, seconds: int = 600, alone: str = "") -> Callable[[Work], Work]:
    """Have `job` done by the function below.

    `seconds`: in a worker it is asked to stop after that, and soon stopped by force; so is a process of its own. Only
    what the embedded form does within a page's own process nobody can stop. `alone`: of all errands with this word
    only one at a time runs in a business; the others come again in seconds.
    """

    def keep(work: Work) -> Work:
        KINDS[job] = ErrandKind(work, seconds, alone)

        @shared_task(name=job.value, soft_time_limit=seconds, time_limit=seconds + EXTRA_SECONDS)
        def run(errand_id: int) -> None:
            try:
                run_errand(errand_id=errand_id)
            except BaseException:
                # because: it could not be noted how it ended; with the connection every lock goes, and a tick
                # gives the errand to somebody else
                connection.close()
                raise

        return work

    return keep
