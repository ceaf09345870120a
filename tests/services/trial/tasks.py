"""In a worker of a trial these jobs only wait; how, the errand's ids say."""

import os
import time

from celery.exceptions import SoftTimeLimitExceeded
from django.db import connection

from tests.services.trial.jobs import ALONE, PLAIN, SHORT
from trimops.celery import app
from trimops.errands.kinds import KINDS, ErrandKind


def note(word: str, number: int) -> None:
    """One line of the trial's log: word, number, seconds of the machine's own clock, process."""
    line = f"{word} {number} {time.monotonic():.3f} {os.getpid()}\n"
    with open(os.environ["TRIAL_LOG"], "a") as log:
        log.write(line)


def wait_and_leave_a_trace(number: int, millis: int, deaf: int = 0) -> None:
    """Take `millis`, then write a row, once however often it runs. The first `deaf` times it does not hear that it
    should stop."""
    note("begin", number)
    try:
        time.sleep(millis / 1000)
    except SoftTimeLimitExceeded:
        if begun(number) > deaf:
            raise
        time.sleep(30)
    with connection.cursor() as cursor:
        cursor.execute("INSERT INTO trial_done VALUES (%s) ON CONFLICT DO NOTHING", [number])
    note("end", number)


def begun(number: int) -> int:
    with open(os.environ["TRIAL_LOG"]) as log:
        return sum(line.startswith(f"begin {number} ") for line in log)


for job, alone in ((PLAIN, ""), (SHORT, ""), (ALONE, "trial")):
    KINDS[job] = ErrandKind(wait_and_leave_a_trace, 60, alone)
app.tasks[SHORT.value].soft_time_limit = 1
app.tasks[SHORT.value].time_limit = 2
