"""A job in the log: each line written while it runs bears its name and number, and the last says how it ended."""

import logging
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass

from trimops.watch.figures import JobOutcome, note_job
from trimops.watch.marks import marked

log = logging.getLogger(__name__)


@dataclass
class JobRun:
    """One try. Whoever catches what the work raises says here how it ended."""

    outcome: JobOutcome = JobOutcome.DONE


@contextmanager
def job_logged(name: str, id: str | int) -> Iterator[JobRun]:
    """Run a job's work inside this block: one line at its end, and its figures (`note_job`) with it.

    `id` is the errand's or the broker's number of this job. What the block raises goes on to the caller and counts
    as failed; where it is caught inside, the lines about it bear the marks too, and `JobRun.outcome` says it.
    """
    started = time.perf_counter()
    run = JobRun()
    with marked(job=name, job_id=str(id)):
        try:
            yield run
        except BaseException:
            run.outcome = JobOutcome.FAILED
            raise
        finally:
            seconds = time.perf_counter() - started
            note_job(name, run.outcome, seconds)
            log.info("job", extra={"told": {"outcome": run.outcome.value, "ms": round(seconds * 1000)}})
