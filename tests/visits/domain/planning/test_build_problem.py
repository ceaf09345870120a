import json

from tests.visits.domain.planning.hand_made import job, monday, shift, week
from visits.domain.planning.measures import PER_HOUR, PER_MINUTE
from visits.domain.planning.read_problem import read_problem


def test_every_figure_arrives_in_deciseconds_metres_and_indexes():
    meal = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}
    made = job("j", "far", 90.5, cows=7, fixed={"shift": "mon", "start": monday("10:00")}, crews=["ann"])
    problem = read_problem(
        json.dumps(week(made, shifts=[shift(meal=meal, max_work_minutes=600)], hygiene={"far": 2}))
    )
    (day,), (visit,) = problem.shifts, problem.jobs
    assert day.end - day.start == 10.5 * PER_HOUR
    assert (day.meal.length, day.meal.latest - day.meal.earliest) == (30 * PER_MINUTE, 2.5 * PER_HOUR)
    assert (day.max_work, day.max_cows, day.place) == (10 * PER_HOUR, None, 0)
    assert (visit.length, visit.cows, visit.hygiene, visit.place) == (54300, 7, 2, 3)
    assert (visit.fixed.shift, visit.fixed.start - day.start) == (0, 3 * PER_HOUR)
    assert problem.travel.times[0][3] == 60 * PER_MINUTE
    assert problem.travel.metres[1][3] == 30_000
