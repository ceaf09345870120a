"""Eight writers at work while a backup is made, and what must be true of the copy: shared by the test and the bench.

Each writer keeps a log of its own of what it committed and when; the copy is held against those logs.
"""

import json
import os
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import count
from threading import Event

from django.db import OperationalError, connection
from django.utils import timezone

from farms.models import Cow
from invoicing.models import Invoice
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from tests.architecture.source_tree import ROOT
from tests.factories import House, make_cow
from trimops.tenancy.unscoped import unscoped
from visits.models import Visit

WRITERS = 8
ISSUERS = 2
COWS, INVOICES = Cow._meta.db_table, Invoice._meta.db_table
Written = tuple[str, int, float]
"""Table, key, and the clock's seconds when the commit had come back."""


@dataclass
class Work:
    """What writers do until `is_over`, and their logs."""

    house: House
    visits: Sequence[int]
    pause: float
    is_over: Event = field(default_factory=Event)
    logs: dict[int, list[Written]] = field(default_factory=dict)
    refused: int = 0

    def write(self, writer: int) -> None:
        log = self.logs.setdefault(writer, [])
        try:
            for table, key in self._issues(writer) if writer < ISSUERS else self._cows(writer):
                log.append((table, key, time.time()))
                if self.is_over.wait(self.pause):
                    return
        finally:
            connection.close()

    def count(self) -> Counter[str]:
        """How much was committed so far, by table."""
        return Counter(table for log in list(self.logs.values()) for table, *_ in list(log))

    def _cows(self, writer: int) -> Iterator[tuple[str, int]]:
        for number in count():
            yield (
                COWS,
                self._until_done(lambda number=number: make_cow(self.house.farm, f"{writer}{number:06}").pk),
            )

    def _issues(self, writer: int) -> Iterator[tuple[str, int]]:
        for visit in self.visits[writer::ISSUERS]:
            yield INVOICES, self._until_done(lambda visit=visit: self._issue(visit))

    def _until_done(self, write: Callable[[], int]) -> int:
        """Try again where SQLite's lock was not to be had in its twenty seconds: the lock goes to whoever asks first,
        and on a busy machine one of eight may be late that often. Nothing is committed then, so nothing is logged."""
        while True:
            try:
                return write()
            except OperationalError as error:
                if "locked" not in str(error):
                    raise
                self.refused += 1

    def _issue(self, visit: int) -> int:
        with unscoped("a writer of the drill"):
            row = Visit.objects.select_related("business").get(pk=visit)
        invoice = draft_invoice(visit=row, at=timezone.now())
        assert invoice is not None
        issue_invoice(invoice=invoice, at=timezone.now(), by=self.house.office)
        return invoice.pk


@contextmanager
def at_work(
    house: House, visits: Sequence[int], *, until: dict[str, int], pause: float = 0.0
) -> Iterator[Work]:
    """Inside, the writers have committed `until` so many by table and go on, with `pause` seconds between two.

    What one of them met is raised at the end.
    """
    work = Work(house, visits, pause)
    with ThreadPoolExecutor(WRITERS) as hands:
        writing = [hands.submit(work.write, writer) for writer in range(WRITERS)]
        try:
            _await(work, until)
            yield work
        finally:
            work.is_over.set()
        for one in writing:
            one.result()


def _await(work: Work, until: dict[str, int], seconds: float = 60) -> None:
    deadline = time.monotonic() + seconds
    while any(work.count()[table] < number for table, number in until.items()):
        assert time.monotonic() < deadline, f"after {seconds} s only {work.count()}"
        time.sleep(0.02)


def losses(logs: dict[int, list[Written]], there: dict[str, set[int]], began: float) -> list[str]:
    """What the copy lacks: anything committed before `began`, and of each writer anything before a row it has."""
    found = []
    for writer, log in logs.items():
        has = [key in there[table] for table, key, _ in log]
        early = [
            written for written, is_there in zip(log, has, strict=True) if written[2] < began and not is_there
        ]
        found += [f"writer {writer} had committed {table} {key} before" for table, key, _ in early]
        if has != sorted(has, reverse=True):
            found.append(f"writer {writer} misses a row before one that is there")
    return found


def said_by_program(env: dict[str, str], *commands: Sequence[str]) -> str:
    """Run the program's own commands in a process of its own; what it said. AssertionError where one fails."""
    script = (
        "import json, sys, django; django.setup()\n"
        "from django.core.management import call_command\n"
        "for words in json.loads(sys.argv[1]): call_command(*words)"
    )
    asked = {**os.environ, "DJANGO_SETTINGS_MODULE": "trimops.settings.base", "REDIS_URL": "", **env}
    ended = subprocess.run(
        [sys.executable, "-c", script, json.dumps(commands)],
        env=asked,
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.returncode == 0, ended.stdout[-2000:] + ended.stderr[-2000:]
    return ended.stdout
