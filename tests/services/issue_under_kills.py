"""The trial of many processes that issue while one kills them: started, and its outcome counted."""

import json
import os
import random
import subprocess
import sys
from collections import Counter
from dataclasses import asdict, dataclass

from django.conf import settings

from invoicing.models import BilledWork, Invoice, NumberSeries
from invoicing.selectors.papers_check import book_faults
from tests.bench.invoicing.finished_visits import LINES_A_BILL
from tests.factories import House
from tests.services.issue_hands import Done, Task, shares_of
from tests.services.worker import database_url_of_test


@dataclass(frozen=True)
class Trial:
    processes: int
    kills: int
    between: float
    seed: int = 1


def issue_under_kills(house: House, visits: list[int], trial: Trial) -> Done:
    """Run it on the database of this process; the fault that ended the program is raised."""
    shares = shares_of(visits, trial.processes, random.Random(trial.seed))
    task = Task(shares, house.office.pk, trial.kills, trial.between, trial.seed)
    env = {**os.environ, "DATABASE_URL": database_url_of_test()}
    env |= {"DJANGO_SETTINGS_MODULE": "trimops.settings.base", "REDIS_URL": ""}
    ended = subprocess.run(
        [sys.executable, "-m", "tests.services.issue_hands"],
        input=json.dumps(asdict(task)),
        capture_output=True,
        text=True,
        cwd=settings.BASE_DIR,
        env=env,
        check=False,
    )
    assert ended.returncode == 0, ended.stderr[-3000:]
    done = Done(**json.loads(ended.stdout))
    assert not done.failed, ended.stderr[-3000:]
    return done


def faults_of(house: House, visits: list[int]) -> list[str]:
    """What is wrong with the books afterwards; nothing when every number, paper and piece of work is there once."""
    count = len(visits)
    issued = Invoice.objects.within(house.scope).issued().order_by("number")
    numbers = [int(number.rpartition("-")[2]) for number in issued.values_list("number", flat=True)]
    billed = Counter(issued.values_list("visit_id", flat=True))
    held = BilledWork.objects.within(house.scope).filter(holds=True, invoice__state="issued")
    keys = list(held.values_list("key", flat=True))
    wrong = {
        "numbers are not 1..n": numbers != list(range(1, count + 1)),
        "the counter is not at n": list(NumberSeries.objects.within(house.scope).values_list("last"))
        != [(count,)],
        "a visit is not billed once": billed != Counter(visits),
        "a draft is left": Invoice.objects.within(house.scope).drafts().exists(),
        "work is not billed once": len(keys) != len(set(keys)) or len(keys) != LINES_A_BILL * count,
        "an e-invoice is missing": issued.filter(papers__cii_sha256="").exists(),
    }
    return [words for words, is_wrong in wrong.items() if is_wrong] + [
        str(fault) for fault in book_faults(house.scope)
    ]
