"""Whether a week asks for another plan than the one that was made for it.

Both are problem documents (trimops-week-problem/1) of the same week, the first written some days before the second.
What has only gone by since, a day that is over or a visit that is done, is no news; only the days ahead count.
"""

from collections.abc import Mapping
from datetime import date

from visits.domain.planning.replan.broken_promises import Document, Part, parts


def has_news(before: Document, plan: Document | None, now: Document, first: date) -> bool:
    """Whether `now` asks for something on or after the day `first` that `before` did not; `plan` is what was found.

    News are: a visit that is new, longer or shorter, has other hours or another last day; one that was promised another
    hour than the plan gave it; a farm that lies elsewhere or whose hygiene level is another; a visit that the plan has
    ahead and that is not wanted any more; a van that goes out otherwise.
    """
    slots = _slots(plan)
    asked, known = _jobs(now), _jobs(before)
    if any(_is_new(job, known.get(key), slots.get(key), first) for key, job in asked.items()):
        return True
    if any(site != _sites(before).get(key, site) for key, site in _sites(now).items()):
        return True
    if any(_day(start) >= first for key, start in slots.items() if key not in asked):
        return True
    return _shifts(before, first) != _shifts(now, first)


def _is_new(job: Part, known: Part | None, slot: str | None, first: date) -> bool:
    if promised := _promised(job):
        return promised != slot
    return known is None or _wish(job, first) != _wish(known, first)


def _wish(job: Part, first: date) -> tuple[object, ...]:
    """What is asked for on the days ahead. An hour promised before stands among its hours and is not one of them."""
    windows = sorted(
        (str(window["start"]), str(window["end"]))
        for window in parts(job, "windows")
        if _day(window["start"]) >= first and window["start"] != _promised(job)
    )
    return job["site"], job["minutes"], job["cows"], job["due"], tuple(windows)


def _promised(job: Part) -> str | None:
    fixed = job.get("fixed")
    return str(fixed["start"]) if isinstance(fixed, Mapping) else None


def _jobs(problem: Document) -> dict[str, Part]:
    return {str(job["id"]): job for job in parts(problem, "jobs")}


def _sites(problem: Document) -> dict[str, Part]:
    return {str(site["id"]): site for site in parts(problem, "sites")}


def _shifts(problem: Document, first: date) -> dict[str, Part]:
    return {str(shift["id"]): shift for shift in parts(problem, "shifts") if _day(shift["start"]) >= first}


def _slots(plan: Document | None) -> dict[str, str]:
    shifts = parts(plan, "shifts") if plan else []
    return {str(stop["job"]): str(stop["start"]) for shift in shifts for stop in parts(shift, "stops")}


def _day(text: object) -> date:
    return date.fromisoformat(str(text)[:10])
