"""A week problem in which some visits stay where they are: at their exact hour, or with their van on their day."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

Part = Mapping[str, object]


@dataclass(frozen=True)
class Hold:
    """Stays in this shift (its id in the problem); at `start` (an aware instant) or, without one, at any hour of it."""

    shift: str
    start: datetime | None = None


def hold_jobs(
    jobs: list[dict[str, object]], shifts: list[dict[str, object]], holds: Mapping[str, Hold]
) -> None:
    """Change the jobs of a problem document in place, such that each hold is kept and the visit cannot be left out.

    A hold whose shift is not in the problem (the van does not go out, or the day is gone) is void; so is one for a
    day on which the farm has no hours.
    """
    by_id = {str(shift["id"]): shift for shift in shifts}
    for job in jobs:
        hold = holds.get(str(job["id"]))
        shift = by_id.get(hold.shift) if hold else None
        if hold is None or shift is None:
            continue
        if hold.start is not None:
            _fix(job, hold.shift, hold.start)
        else:
            _keep_day(job, shift)


def _fix(job: dict[str, object], shift: str, start: datetime) -> None:
    end = start + timedelta(minutes=float(str(job["minutes"])))
    job["fixed"] = {"shift": shift, "start": start.isoformat()}
    job["windows"] = [{"start": start.isoformat(), "end": end.isoformat()}]
    job.pop("leave_out_cost", None)
    job.pop("crews", None)


def _keep_day(job: dict[str, object], shift: Part) -> None:
    windows = job["windows"]
    kept = [w for w in windows if _meets(w, shift)] if isinstance(windows, list) else []
    if kept and "fixed" not in job:
        job["windows"], job["crews"] = kept, [shift["crew"]]
        job.pop("leave_out_cost", None)


def _meets(window: Part, shift: Part) -> bool:
    return _at(window["start"]) < _at(shift["end"]) and _at(window["end"]) > _at(shift["start"])


def _at(text: object) -> datetime:
    return datetime.fromisoformat(str(text))
