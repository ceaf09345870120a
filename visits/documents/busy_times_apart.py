"""A stranger's calendar is read in a process of its own, that may use so much time and memory and no more.

    python -m visits.documents.busy_times_apart   (the question and the calendar come in, what it found goes out)

because: a rule of repeats can be written so that the libraries reckon for hours, and nobody knows all such ways.
"""

import json
import resource
import subprocess
import sys
from datetime import date, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

from visits.documents.busy_times import BusyTime, BusyTimes, read_busy_times
from visits.documents.calendar_rules import CannotRead

CPU_SECONDS = 20
WALL_SECONDS = 60
MEMORY = 1_000_000_000
COMMAND = ["-m", "visits.documents.busy_times_apart"]
TOO_LONG = "reading it takes too long"
ROOT = Path(__file__).parents[2]


def read_busy_times_apart(content: bytes, first: date, last: date, zone: ZoneInfo) -> BusyTimes:
    """As `read_busy_times`; CannotRead also where it takes more than `CPU_SECONDS` or `MEMORY` bytes."""
    asked = json.dumps({"first": first.isoformat(), "last": last.isoformat(), "zone": zone.key})
    command = [sys.executable, *COMMAND]
    try:
        done = subprocess.run(
            command,
            input=asked.encode() + b"\n" + content,
            capture_output=True,
            timeout=WALL_SECONDS,
            cwd=ROOT,
        )
    except subprocess.TimeoutExpired:
        raise CannotRead(TOO_LONG) from None
    if done.returncode != 0:
        raise CannotRead(TOO_LONG)
    told = json.loads(done.stdout)
    if "refused" in told:
        raise CannotRead(told["refused"])
    return BusyTimes(tuple(_read(row, zone) for row in told["times"]), told["left_out"])


def _read(row: list[str], zone: ZoneInfo) -> BusyTime:
    uid, starts, ends, kind, summary = row
    begin, end = (datetime.fromisoformat(text).astimezone(zone) for text in (starts, ends))
    return BusyTime(uid, begin, end, kind == "day", summary)


def _written(busy: BusyTime) -> list[str]:
    kind = "day" if busy.is_all_day else "hours"
    return [busy.uid, busy.starts.isoformat(), busy.ends.isoformat(), kind, busy.summary]


def _answer() -> dict[str, object]:
    asked = json.loads(sys.stdin.buffer.readline())
    days = date.fromisoformat(asked["first"]), date.fromisoformat(asked["last"])
    try:
        found = read_busy_times(sys.stdin.buffer.read(), *days, ZoneInfo(asked["zone"]))
    except CannotRead as no:
        return {"refused": str(no)}
    return {"times": [_written(busy) for busy in found.times], "left_out": found.left_out}


def main() -> None:
    """The other side of it."""
    resource.setrlimit(resource.RLIMIT_CPU, (CPU_SECONDS, CPU_SECONDS + 1))
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    sys.stdout.write(json.dumps(_answer()))


if __name__ == "__main__":
    main()
