"""The rest of a day already begun, said in the words of the contract: a shift leaves its base once and returns once.

A van that stands at a farm, free from a given time on, is a shift whose first stop is that visit as a *fixed job*
from its real start to the time the van is free. That is exact in all that is still to be decided:

- **Where and when**: the drive to the next stop, or home, begins at that farm and not before that time.
- **Hours of the day**: the shift may leave its base just so that it drives straight to that farm for that start. The
  crew has really been out since `left`; the minutes more (or less) are taken off (or added to) `max_work_minutes`.
- **Cows**: those of visits done before are taken off `max_cows`; those of the visit itself count as its own.
- **Hygiene**: where the crew has been on a worse herd before, the farm is called at under a site of its own with that
  level, so that no cleaner herd comes after. With travel by estimate, another job of the same farm is then
  `minutes_per_leg` away instead of 0.
- **Meal**: had already, it is no longer asked for. Its time gone by without it, it is due within an hour from when
  the van is free; where even going straight home leaves no gap for it in the shift, it is had at home after it.
- **Going home** is always possible: the shift's end, its longest day and most cows are stretched, where they must be,
  to just what driving straight home takes; nothing else fits into such a stretch.

Kilometres and hours driven before that farm are counted as if it had been the first: the same amount in every plan
for the day, so nothing is decided by it.
"""

import json
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import inf

from visits.domain.planning.board import Board
from visits.domain.planning.measures import minutes
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.broken_promises import Document, Part, parts

MEAL_WAITS = timedelta(hours=1)
NOT_HERE = ("windows", "due", "late_cost_per_day", "leave_out_cost", "fixed", "crews")


@dataclass(frozen=True)
class SoFar:
    """`job` is the last visit begun in `shift`: from `start`, the van free from `free` on, away from base since `left`.

    `cows_before` and `hygiene_before` are of the visits done before it: the sum, and the highest level.
    """

    shift: str
    job: str
    start: datetime
    free: datetime
    left: datetime | None = None
    cows_before: int = 0
    hygiene_before: int = 0
    meal_had: bool = False


def with_day_so_far(document: Document, so_far: SoFar) -> dict[str, object]:
    """The problem in which that shift begins with what has been done of it. The job must be one of the problem's.

    Where the shift is closed until later, the van stands until it opens. ValueError where the shift or job is unknown.
    """
    shift = _named(document, "shifts", so_far.shift)
    job = _named(document, "jobs", so_far.job)
    free = max(so_far.free, _at(shift["start"]), so_far.start)
    here = _site(document, str(job["site"]), so_far)
    sites = parts(document, "sites")
    if here["id"] not in [site["id"] for site in sites]:
        document = _with_twin(document, here, str(job["site"]))
    drives = _drives(document, str(shift["base"]), str(here["id"]))
    begun = {
        **{key: value for key, value in job.items() if key not in NOT_HERE},
        "site": here["id"],
        "minutes": (free - so_far.start) / timedelta(minutes=1),
        "windows": [{"start": so_far.start.isoformat(), "end": free.isoformat()}],
        "fixed": {"shift": shift["id"], "start": so_far.start.isoformat()},
    }
    rest = _rest(shift, begun, so_far, (so_far.start - drives[0], free, free + drives[1]))
    if not _can_go_home({**document, "sites": [here], "shifts": [rest], "jobs": [begun]}):
        rest = {key: value for key, value in rest.items() if key != "meal"}
    return {
        **document,
        "shifts": [rest if each is shift else each for each in parts(document, "shifts")],
        "jobs": [begun if each["id"] == job["id"] else each for each in parts(document, "jobs")],
    }


def _rest(shift: Part, job: Part, so_far: SoFar, times: tuple[datetime, datetime, datetime]) -> Part:
    """The shift from its leaving in the model on; `times` are that, when the van is free, and home at the earliest."""
    leave, free, home = times
    rest = {**shift, "start": leave.isoformat(), "end": max(_at(shift["end"]), home).isoformat()}
    if "max_work_minutes" in shift and shift["max_work_minutes"] is not None:
        used = (leave - (so_far.left or leave)) / timedelta(minutes=1)
        need = (home - leave) / timedelta(minutes=1)
        rest["max_work_minutes"] = max(float(str(shift["max_work_minutes"])) - used, need)
    if "max_cows" in shift and shift["max_cows"] is not None:
        rest["max_cows"] = max(int(str(shift["max_cows"])) - so_far.cows_before, int(str(job.get("cows", 0))))
    meal = _meal(shift, so_far, free)
    return {**rest, "meal": meal} if meal else {key: value for key, value in rest.items() if key != "meal"}


def _meal(shift: Part, so_far: SoFar, free: datetime) -> Part | None:
    meal = shift.get("meal")
    if not isinstance(meal, dict) or so_far.meal_had:
        return None
    if _at(meal["latest"]) >= free:
        return meal
    return {**meal, "earliest": free.isoformat(), "latest": (free + MEAL_WAITS).isoformat()}


def _site(document: Document, name: str, so_far: SoFar) -> Part:
    site = _named(document, "sites", name)
    if int(str(site.get("hygiene", 0))) >= so_far.hygiene_before:
        return site
    return {**site, "id": f"{name}-today-{so_far.shift}", "hygiene": so_far.hygiene_before}


def _with_twin(document: Document, twin: Part, of: str) -> dict[str, object]:
    """The problem with one more site in the place of another."""
    travel = document["travel"]
    if isinstance(travel, dict) and travel["kind"] == "matrix":
        at = travel["places"].index(of)
        tables = {key: _with_copy(travel[key], at) for key in ("minutes", "km")}
        travel = {**travel, **tables, "places": [*travel["places"], twin["id"]]}
    return {**document, "travel": travel, "sites": [*parts(document, "sites"), twin]}


def _with_copy(table: list[list[float]], at: int) -> list[list[float]]:
    rows = [[*row, 0 if place == at else row[at]] for place, row in enumerate(table)]
    return [*rows, [*rows[at][:at], 0, *rows[at][at + 1 : -1], 0]]


def _can_go_home(document: Document) -> bool:
    """Whether the one shift of the problem can do its one job and drive home, meal and all."""
    return Board(read_problem(json.dumps(document))).cost(0, (0,)) < inf


def _drives(document: Document, base: str, site: str) -> tuple[timedelta, timedelta]:
    """From base to that site, and back."""
    bare = {**document, "jobs": [], "shifts": [], "sites": [_named(document, "sites", site)]}
    times = read_problem(json.dumps(bare)).travel.times
    a, b = [str(place["id"]) for place in parts(document, "bases")].index(base), len(parts(document, "bases"))
    return timedelta(minutes=minutes(times[a][b])), timedelta(minutes=minutes(times[b][a]))


def _named(document: Document, key: str, name: str) -> Part:
    for part in parts(document, key):
        if part["id"] == name:
            return part
    raise ValueError(f"{key}: none is called {name}")


def _at(text: object) -> datetime:
    return datetime.fromisoformat(str(text))
