"""A problem document with the limit changed that a reason names: what the reason claims can then be tried."""

from copy import deepcopy
from datetime import datetime, timedelta

from tests.visits.domain.planning.reasons.weeks_in_hand import ways_in


def later(text, minutes):
    return (datetime.fromisoformat(text) + timedelta(minutes=minutes)).isoformat()


def shift_end(problem, job, minutes):
    for day in problem["shifts"]:
        day["end"] = later(day["end"], minutes)


def shift_start(problem, job, minutes):
    for day in problem["shifts"]:
        day["start"] = later(day["start"], -minutes)


def work_limit(problem, job, minutes):
    for day in problem["shifts"]:
        if "max_work_minutes" in day:
            day["max_work_minutes"] += minutes


def longer_day(problem, job, minutes):
    shift_end(problem, job, minutes)
    work_limit(problem, job, minutes)


def meal(problem, job, minutes):
    for day in problem["shifts"]:
        if "meal" in day:
            day["meal"]["minutes"] = max(0, day["meal"]["minutes"] - minutes)


def window_end(problem, job, minutes):
    for window in problem["jobs"][job]["windows"]:
        window["end"] = later(window["end"], minutes)


def window_start(problem, job, minutes):
    for window in problem["jobs"][job]["windows"]:
        window["start"] = later(window["start"], -minutes)


def shorter_visit(problem, job, minutes):
    asked = problem["jobs"][job]
    asked["minutes"] = max(asked["minutes"] / 2, asked["minutes"] - minutes)


def cows_limit(problem, job, cows):
    for day in problem["shifts"]:
        if "max_cows" in day:
            day["max_cows"] += cows


def no_hygiene(problem, job, _):
    for site in problem["sites"]:
        site["hygiene"] = 0


def other_hours(problem, job, _):
    problem["jobs"][job]["windows"] = [
        {"start": day["start"], "end": day["end"]} for day in problem["shifts"]
    ]


def any_crew(problem, job, _):
    problem["jobs"][job].pop("crews", None)


def no_promise(problem, job, _):
    problem["jobs"][job].pop("fixed", None)


CHANGES = {
    "shift-end": shift_end,
    "shift-start": shift_start,
    "work-limit": work_limit,
    "longer-day": longer_day,
    "meal": meal,
    "window-end": window_end,
    "window-start": window_start,
    "shorter-visit": shorter_visit,
    "cows-limit": cows_limit,
    "hygiene-order": no_hygiene,
    "other-hours": other_hours,
    "any-crew": any_crew,
    "no-promise": no_promise,
}


def relaxed(problem, code, job, by=0):
    """The problem with that limit of every shift, or of that job, changed by `by`."""
    made = deepcopy(problem)
    CHANGES[code](made, job, by)
    return made


def fits(problem, code, week, job, by=0):
    """(extra, shift, order) of every place that can take the job then; the week's own orders stand.

    `longer-day` is for shifts with a work limit only: no other place counts.
    """
    found = ways_in(relaxed(problem, code, job, by), week, job, before=problem)
    limited = [code != "longer-day" or "max_work_minutes" in day for day in problem["shifts"]]
    return [each for each in found if limited[each[1]]]
