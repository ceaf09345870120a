"""Several processes that draft and issue, and one that kills them at random: `python -m tests.services.issue_hands`.

What to do comes as JSON on standard input, what was done goes as JSON to standard output. The hands are forked from a
process that has loaded everything and has no connection to the database yet, so a killed one is replaced at once.
"""

import contextlib
import json
import os
import random
import signal
import sys
import time
from dataclasses import asdict, dataclass, field

import django


@dataclass(frozen=True)
class Task:
    """Keys of visits for each hand, whose business and user it is, kills and the mean seconds between them."""

    shares: list[list[int]]
    by: int
    kills: int
    between: float
    seed: int


@dataclass
class Done:
    """What became of it."""

    killed: int = 0
    failed: list[int] = field(default_factory=list)
    seconds: float = 0.0


def shares_of(visits: list[int], hands: int, chance: random.Random) -> list[list[int]]:
    """For each hand visits of its own and every fourth of the next one's: two press the same button now and then."""
    own = [visits[n::hands] for n in range(hands)]
    mixed = [[*own[n], *own[(n + 1) % hands][::4]] for n in range(hands)]
    for share in mixed:
        chance.shuffle(share)
    return mixed


def run(task: Task) -> Done:
    """Fork, kill, fork again, until every hand has come to its end."""
    chance, done, began = random.Random(task.seed), Done(), time.monotonic()
    hands = {_fork(task, share): share for share in range(len(task.shares))}
    next_kill = time.monotonic() + chance.uniform(0, 2 * task.between)
    while hands:
        if done.killed < task.kills and time.monotonic() >= next_kill:
            os.kill(chance.choice(list(hands)), signal.SIGKILL)
            next_kill = time.monotonic() + chance.uniform(0, 2 * task.between)
        ended, status = os.waitpid(-1, os.WNOHANG)
        if not ended:
            time.sleep(0.002)
            continue
        share = hands.pop(ended)
        if os.WIFSIGNALED(status):
            done.killed += 1
            hands[_fork(task, share)] = share
        elif status:
            done.failed.append(os.waitstatus_to_exitcode(status))
    done.seconds = time.monotonic() - began
    return done


def _fork(task: Task, share: int) -> int:
    process = os.fork()
    if process:
        return process
    try:
        hand(task.shares[share], task.by)
    except BaseException:
        sys.excepthook(*sys.exc_info())
        os._exit(1)
    os._exit(0)


def hand(visits: list[int], by: int) -> None:
    """Draft and issue each visit that is not billed yet; being late is no fault."""
    from django.utils import timezone  # noqa: PLC0415

    from invoicing.models import Invoice  # noqa: PLC0415
    from invoicing.services.draft_invoice import draft_invoice  # noqa: PLC0415
    from invoicing.services.issue_invoice import AlreadyIssued, issue_invoice  # noqa: PLC0415
    from trimops.accounts.models import User  # noqa: PLC0415
    from trimops.tenancy.unscoped import unscoped  # noqa: PLC0415
    from visits.models import Visit  # noqa: PLC0415

    user = User.objects.get(pk=by)
    with unscoped("a hand of the test"):
        billed = set(Invoice.objects.issued().filter(visit__in=visits).values_list("visit_id", flat=True))
        rows = list(Visit.objects.filter(pk__in=visits).select_related("business"))
    for row in sorted(rows, key=lambda row: visits.index(row.pk)):
        if row.pk in billed:
            continue
        invoice = draft_invoice(visit=row, at=timezone.now())
        if invoice is None:
            # Another hand has issued it between two looks; the count at the end tells a visit that nobody billed.
            continue
        with contextlib.suppress(AlreadyIssued):
            issue_invoice(invoice=invoice, at=timezone.now(), by=user)


def load() -> None:
    """Everything a hand needs, fonts and schemas included; no connection."""
    django.setup()
    import invoicing.services.draft_invoice  # noqa: PLC0415
    import invoicing.services.issue_invoice  # noqa: F401, PLC0415


if __name__ == "__main__":
    load()
    print(json.dumps(asdict(run(Task(**json.load(sys.stdin))))))
