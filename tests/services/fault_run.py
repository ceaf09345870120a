"""A night and a day of many small businesses while their servers are killed: `python -m tests.services.fault_run`.

Workers and beat are SIGKILLed, Valkey is restarted with and without its data, PostgreSQL crashes, the mail server
refuses, hangs and hangs up. Then everything is left in peace, and what is there is counted: each report, invoice,
re-check and mail must be there once in effect. It prints JSON and ends with 1 where something is wrong.
"""

import json
import os
import random
import sys
import tempfile
import threading
import time
from argparse import ArgumentParser, Namespace
from collections.abc import Callable
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import TypeVar

import django

from tests.services.fault_servers import ROOT, Broker, Database, Workers
from tests.services.smtp_server import MailServer, mail_server

T = TypeVar("T")
LOOK_EVERY = 2.0
MOODY_SECONDS = 20.0
PRESS_SECONDS = 15.0
STRIKE_SECONDS = 8.0
"""So long a kill waits for an errand that is under way: to kill who does nothing tells nothing."""


@dataclass
class Outcome:
    """What was done to the servers, what was counted afterwards, and what is wrong."""

    businesses: int = 0
    kills: int = 0
    kills_at_work: int = 0
    broker_restarts: int = 0
    broker_emptied: int = 0
    database_crashes: int = 0
    smtp_refused_or_hung: int = 0
    seconds_of_faults: float = 0
    seconds_until_quiet: float = 0
    presses: int = 0
    """Of "Try now" for mails that were refused, since their own pauses are minutes and hours."""
    counts: dict[str, int] = field(default_factory=dict)
    wrong: list[str] = field(default_factory=list)


class MoodyServer(MailServer):
    """Takes four mails in five; the others are refused for now, or the line breaks before, in or after the answer."""

    moods = (
        ("take",) * 32
        + ("451 come again later",) * 3
        + ("hang up",) * 2
        + ("take and hang up",) * 2
        + ("silent",)
    )
    chance = random.Random(4)
    is_calm = False
    bad = 0

    def next_act(self) -> str:
        self.came += 1
        act = "take" if self.is_calm else self.chance.choice(self.moods)
        self.bad += act != "take"
        return act


def main(asked: Namespace) -> int:
    with tempfile.TemporaryDirectory(prefix="trimops-faults-") as name, mail_server(MoodyServer) as smtp:
        folder = Path(name)
        (folder / "logs").mkdir()
        database, broker = Database(folder), Broker(folder / "broker")
        os.environ |= _environment(folder, database, broker, smtp)
        try:
            outcome = _run(asked, folder, database, broker, smtp)
        finally:
            broker.stop()
            database.stop()
    print(json.dumps(asdict(outcome), indent=1))
    return 1 if outcome.wrong else 0


def _environment(folder: Path, database: Database, broker: Broker, smtp: MailServer) -> dict[str, str]:
    return {
        "DATABASE_URL": database.url,
        "REDIS_URL": broker.url,
        "DJANGO_SETTINGS_MODULE": "trimops.settings.base",
        "TRIMOPS_DATA_DIR": str(folder / "data"),
        "TRIMOPS_SECRET_KEY": "a-trial-of-faults-0123456789-abcdefghijklmnopqrstuvwxyz",
        "TRIMOPS_EMAIL_HOST": "127.0.0.1",
        "TRIMOPS_EMAIL_PORT": str(smtp.port),
        "TRIMOPS_EMAIL_TLS": "0",
        "TRIMOPS_PLAN_SECONDS": "0.3",
        "PYTHONPATH": str(ROOT),
    }


def _run(asked: Namespace, folder: Path, database: Database, broker: Broker, smtp: MoodyServer) -> Outcome:
    django.setup()
    from tests.services.fault_counts import count_all, what_waits  # noqa: PLC0415
    from tests.services.fault_work import Hands, build_all, press_send  # noqa: PLC0415
    from tests.straight_tables import make_tables  # noqa: PLC0415

    outcome = Outcome(businesses=asked.businesses)
    make_tables()
    houses = build_all(asked.businesses)
    workers = Workers(folder / "logs", 2, dict(os.environ))
    hands = Hands(houses)
    working = threading.Thread(target=hands.work, daemon=True)
    try:
        working.start()
        began = time.monotonic()
        _hurt(asked, database, broker, workers, outcome)
        outcome.seconds_of_faults = round(time.monotonic() - began, 1)
        began = moody_until = pressed = time.monotonic()
        while time.monotonic() < began + asked.patience:
            workers.keep_up()
            # Its moods last a while longer, since mails come last; then it takes what it is given.
            moody_until = time.monotonic() + MOODY_SECONDS if not hands.is_done else moody_until
            smtp.is_calm = time.monotonic() > moody_until
            waits = what_waits()
            if hands.is_done and not waits:
                break
            print(
                f"{time.monotonic() - began:.0f} s: {hands.left} businesses to bill; {waits}", file=sys.stderr
            )
            if hands.is_done and time.monotonic() > pressed + PRESS_SECONDS:
                # What was refused waits minutes and hours by itself; a person presses "Try now" here instead.
                press_send()
                pressed, outcome.presses = time.monotonic(), outcome.presses + 1
            time.sleep(LOOK_EVERY)
        outcome.seconds_until_quiet = round(time.monotonic() - began, 1)
        hands.stops = True
        working.join(60)
        outcome.kills, outcome.smtp_refused_or_hung = workers.killed, smtp.bad
        if hands.fault:
            outcome.wrong.append(f"the hands: {hands.fault}")
        count_all(houses, smtp.taken, outcome.counts, outcome.wrong)
    finally:
        workers.stop()
        if asked.keep_logs:
            Path(asked.keep_logs).write_text(workers.said())
    return outcome


def _hurt(asked: Namespace, database: Database, broker: Broker, workers: Workers, outcome: Outcome) -> None:
    """All faults in a random order, a random while apart."""
    chance = random.Random(asked.seed)
    faults = ["kill"] * asked.kills + ["broker"] * asked.broker + ["database"] * asked.database
    chance.shuffle(faults)
    for fault in faults:
        _wait(chance.uniform(0.4, 1.6) * asked.between, workers)
        if fault == "kill":
            outcome.kills_at_work += _wait_for_work(workers)
            workers.kill_one(chance)
        elif fault == "broker":
            keeps = outcome.broker_restarts % 2 == 0
            broker.restart(keeps_data=keeps, away_seconds=chance.uniform(0, 3))
            outcome.broker_restarts += 1
            outcome.broker_emptied += not keeps
        else:
            database.crash(away_seconds=chance.uniform(0, 3))
            outcome.database_crashes += 1


def _wait(seconds: float, workers: Workers) -> None:
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        workers.keep_up()
        time.sleep(0.2)


def _wait_for_work(workers: Workers) -> bool:
    """Whether somebody is at an errand now."""
    from tests.services.fault_counts import is_somebody_at_it  # noqa: PLC0415

    until = time.monotonic() + STRIKE_SECONDS
    while time.monotonic() < until:
        workers.keep_up()
        if is_somebody_at_it():
            return True
        time.sleep(0.02)
    return False


def through_faults(do: Callable[[], T]) -> T:
    """As a person's browser or phone would: again, until the server has answered."""
    from django.db import Error, connection  # noqa: PLC0415

    for _ in range(400):
        try:
            return do()
        except Error:
            connection.close()
            time.sleep(0.25)
    raise TimeoutError("the database did not come back")


def parser() -> ArgumentParser:
    words = ArgumentParser()
    words.add_argument("--businesses", type=int, default=200)
    words.add_argument("--kills", type=int, default=50)
    words.add_argument("--broker", type=int, default=5)
    words.add_argument("--database", type=int, default=3)
    words.add_argument("--between", type=float, default=6.0, help="mean seconds between two faults")
    words.add_argument("--patience", type=float, default=1200, help="seconds until nothing may wait any more")
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--keep-logs", default="")
    return words


if __name__ == "__main__":
    sys.exit(main(parser().parse_args()))
