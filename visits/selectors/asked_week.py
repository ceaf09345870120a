"""The week from now on as a problem, with the visit that is asked for as one of its jobs."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime

from trimops.kernel.clock import local_day, monday_of
from visits.domain.planning.replan.plan_in_force import InForce
from visits.selectors.asked_visit import Asked
from visits.selectors.diary_stops import DiaryStop
from visits.selectors.week_problem import week_problem
from visits.selectors.week_under_way import week_from_now

Problem = dict[str, list[dict[str, object]]]


def asked_week(
    asked: Asked, monday: date, now: datetime, stops: Sequence[DiaryStop]
) -> tuple[Problem, list[DiaryStop]]:
    """The problem of the week, today's rounds as far as they have come, and the stops with which these begin."""
    business, also = asked.farm.business, [asked.as_visit()]
    farms = [stop.visit for stop in stops if stop.visit]
    problem: Problem
    if monday_of(local_day(now, business.zone)) != monday:
        problem = week_problem(business, monday, now, begun=farms, also=also)  # type: ignore[assignment]
        return problem, []
    problem, begun = week_from_now(  # type: ignore[assignment]
        business, monday, now, begun=farms, also=also
    )
    jobs = {str(job["id"]): job for job in problem["jobs"]}
    return problem, [_begun_stop(each, jobs[each.job]) for each in begun]


def _begun_stop(begun: InForce, job: Mapping[str, object]) -> DiaryStop:
    minutes, cows = round(float(str(job["minutes"]))), int(str(job.get("cows", 0)))
    return DiaryStop(
        begun.job, begun.shift, begun.start, minutes, cows, str(job["site"]), "the visit under way"
    )


def is_ahead(stop: DiaryStop, begun: Sequence[DiaryStop]) -> bool:
    """Whether it is none of those that today's rounds have behind them, or begin with."""
    return all(
        stop.job != each.job and (stop.shift != each.shift or stop.start > each.start) for each in begun
    )
