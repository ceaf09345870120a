"""No figure of a plan can be changed without a breach: every number, instant, name and reason, one at a time.

Only what the contract leaves free may change: when within its slack a drive or the meal happens, a lower bound, the
engine's name and dice, and the words of a detail.
"""

import copy
import json
from datetime import datetime, timedelta

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from visits.domain.planning.audit import audit_week
from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.solve_limits import SolveLimits

FREE = {"format", "engine", "seed", "seconds", "bound", "detail", "arrive", "meal"}
JUST_OVER = {"km": 0.0021, "work_minutes": 0.0034, "travel_minutes": 0.0034, "cows": 1, "days_late": 1}
"""A little more than the tolerance (a metre, a tenth of a second) on either side of a printed figure."""


@pytest.fixture(scope="module", params=[(9, 1, 1), (9, 1, 2)], ids=["one job left out", "all done"])
def week(request):
    problem = made_up_week(*request.param, load=0.5)
    plan, _ = plan_week_problem(json.dumps(problem), limits=SolveLimits(iterations=60))
    return problem, json.loads(json.dumps(plan))


def figures(part, way=()):
    """The way to every plain value that is not free."""
    inner = part.items() if isinstance(part, dict) else enumerate(part)
    for key, value in inner:
        if key not in FREE:
            if isinstance(value, dict | list):
                yield from figures(value, (*way, key))
            else:
                yield (*way, key)


def others(key, value):
    """Values that are not the same."""
    if isinstance(value, str):
        try:
            moment = datetime.fromisoformat(value)
        except ValueError:
            return [value + "x", "no-crew"]
        return [(moment + timedelta(seconds=step)).isoformat() for step in (-0.3, 0.3, 3600)]
    step = JUST_OVER.get(key, 0.03)
    return [value + step, value - step, -value - step]


def changed(plan, way, value):
    copied = copy.deepcopy(plan)
    spot = copied
    for step in way[:-1]:
        spot = spot[step]
    spot[way[-1]] = value
    return copied


def test_any_other_figure_is_a_breach(week):
    problem, plan = week
    ways = list(figures(plan))
    assert len(ways) > 60
    unseen = []
    for way in ways:
        spot = plan
        for step in way:
            spot = spot[step]
        for other in others(way[-1], spot):
            if not audit_week(problem, changed(plan, way, other)):
                unseen.append((way, spot, other))
    assert unseen == []


def test_a_drive_may_move_within_its_slack_and_no_further(week):
    problem, plan = week
    tried = 0
    for at, day in enumerate(plan["shifts"]):
        free = datetime.fromisoformat(day["leave"])
        for number, stop in enumerate(day["stops"]):
            first = free + timedelta(minutes=stop["travel_minutes"])
            last, free = datetime.fromisoformat(stop["start"]), datetime.fromisoformat(stop["finish"])
            for moment, clean in [
                (first, True),
                (last, True),
                (first - SECOND, False),
                (last + SECOND, False),
            ]:
                moved = changed(plan, ("shifts", at, "stops", number, "arrive"), moment.isoformat())
                if not (clean and on_the_meal(day, moment, stop["travel_minutes"])):
                    assert (audit_week(problem, moved) == []) is clean
                    tried += clean
    assert tried > 5


SECOND = timedelta(seconds=1)


def on_the_meal(day, arrive, minutes):
    """Whether a drive that ends then would fall on the printed meal."""
    if day["meal"] is None:
        return False
    start, end = (datetime.fromisoformat(day["meal"][key]) for key in ("start", "end"))
    return arrive - timedelta(minutes=minutes) < end and arrive > start


def test_no_stop_and_no_shift_can_be_dropped_doubled_or_moved(week):
    problem, plan = week
    for at, day in enumerate(plan["shifts"]):
        shifts = plan["shifts"]
        assert audit_week(problem, plan | {"shifts": shifts[:at] + shifts[at + 1 :]})
        assert audit_week(problem, plan | {"shifts": [*shifts, day]})
        for number, stop in enumerate(day["stops"]):
            rest = day["stops"][:number] + day["stops"][number + 1 :]
            assert audit_week(problem, changed(plan, ("shifts", at, "stops"), rest))
            assert audit_week(problem, changed(plan, ("shifts", at, "stops"), [*day["stops"], stop]))
