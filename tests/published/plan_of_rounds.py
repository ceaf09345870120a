"""A plan document of given rounds with a claimed total, without any code of the planner: the audit is to judge it."""

from datetime import datetime, timedelta

Rounds = dict[str, list[str]]
"""Shift id -> job ids, in order."""


def plan_of_rounds(problem: dict, rounds: Rounds, claimed: float) -> dict:
    """Everything as early as it can be. `claimed`: the published length, printed as the cost of the shifts."""
    shifts = {shift["id"]: shift for shift in problem["shifts"]}
    return {
        "format": "trimops-week-plan/1",
        "engine": "published",
        "seed": 0,
        "seconds": 0,
        "cost": {"total": claimed, "shifts": claimed, "lateness": 0, "left_out": 0},
        "bound": claimed,
        "shifts": [driven(problem, shifts[shift], jobs) for shift, jobs in rounds.items()],
        "left_out": [],
    }


def driven(problem: dict, shift: dict, names: list[str]) -> dict:
    jobs = {job["id"]: job for job in problem["jobs"]}
    free, place, stops = datetime.fromisoformat(shift["start"]), shift["base"], []
    for name in names:
        stops.append(stop(problem, jobs[name], free, place))
        free, place = datetime.fromisoformat(stops[-1]["finish"]), jobs[name]["site"]
    home, km = leg(problem, place, shift["base"])
    leave, back = datetime.fromisoformat(shift["start"]), free + timedelta(minutes=home)
    return {
        "id": shift["id"],
        "leave": leave.isoformat(),
        "return": back.isoformat(),
        "work_minutes": (back - leave).total_seconds() / 60,
        "km": sum(each["km"] for each in stops) + km,
        "cows": sum(jobs[name].get("cows", 0) for name in names),
        "meal": None,
        "stops": stops,
    }


def stop(problem: dict, job: dict, free: datetime, place: str) -> dict:
    minutes, km = leg(problem, place, job["site"])
    arrive, length = free + timedelta(minutes=minutes), timedelta(minutes=job["minutes"])
    start = first_start(job, arrive, length)
    return {
        "job": job["id"],
        "arrive": arrive.isoformat(),
        "start": start.isoformat(),
        "finish": (start + length).isoformat(),
        "travel_minutes": minutes,
        "km": km,
        "days_late": 0,
    }


def first_start(job: dict, arrive: datetime, length: timedelta) -> datetime:
    """In the first window that still holds it; on arrival where none does, for the audit to find."""
    for window in job["windows"]:
        start = max(arrive, datetime.fromisoformat(window["start"]))
        if start + length <= datetime.fromisoformat(window["end"]):
            return start
    return arrive


def leg(problem: dict, start: str, end: str) -> tuple[float, float]:
    table = problem["travel"]
    row, column = table["places"].index(start), table["places"].index(end)
    return (0.0, 0.0) if start == end else (table["minutes"][row][column], table["km"][row][column])
