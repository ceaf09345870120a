"""What can happen in the middle of a week, and what the week problem becomes by it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from visits.domain.planning.replan.broken_promises import Document, parts
from visits.domain.planning.replan.close_shifts import closed
from visits.domain.planning.replan.day_so_far import SoFar, with_day_so_far


@dataclass(frozen=True)
class RunningLate:
    """The van will be free at this farm at this time only; the day begun until then."""

    so_far: SoFar


@dataclass(frozen=True)
class OutOfAction:
    """Nothing goes out with this crew from `since` to `until`: crush or van broken, or the trimmer ill."""

    crew: str
    since: datetime
    until: datetime


@dataclass(frozen=True)
class CalledOff:
    """The farm does not want this job."""

    job: str


@dataclass(frozen=True)
class NewJob:
    """A lame cow that cannot wait: a job of the problem's own shape, and its site where that is new to it."""

    job: Mapping[str, object]
    site: Mapping[str, object] = field(default_factory=dict)


Event = RunningLate | OutOfAction | CalledOff | NewJob


def after(document: Document, event: Event) -> dict[str, object]:
    """The problem as it stands after `event`. Promises may be broken by it: see `broken_promises`.

    A new site needs travel by estimate: a matrix does not know it (ValueError).
    """
    if isinstance(event, RunningLate):
        return with_day_so_far(document, event.so_far)
    if isinstance(event, OutOfAction):
        kept = [
            closed(s, event.since, event.until) if s["crew"] == event.crew else s
            for s in parts(document, "shifts")
        ]
        return {**document, "shifts": [shift for shift in kept if shift is not None]}
    jobs = parts(document, "jobs")
    if isinstance(event, CalledOff):
        return {**document, "jobs": [job for job in jobs if job["id"] != event.job]}
    return _with_job(document, event)


def _with_job(document: Document, event: NewJob) -> dict[str, object]:
    sites = parts(document, "sites")
    if event.site and event.site["id"] not in [site["id"] for site in sites]:
        travel = document["travel"]
        if not isinstance(travel, dict) or travel["kind"] != "estimate":
            raise ValueError("a new site has no place in a travel matrix")
        sites = [*sites, dict(event.site)]
    return {**document, "sites": sites, "jobs": [*parts(document, "jobs"), dict(event.job)]}
