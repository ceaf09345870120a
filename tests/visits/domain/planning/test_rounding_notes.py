import json

import pytest

from tests.visits.domain.planning.hand_made import job, matrix, monday, shift, week, window
from visits.domain.planning.read_problem import read_problem

MEAL = {"minutes": 30.0001, "earliest": monday("11:30"), "latest": "2026-03-02T14:00:00.05Z"}
FINE = {"start": "2026-03-02T07:00:00.04Z", "end": monday("17:30")}


@pytest.mark.parametrize(
    ("problem", "notes"),
    [
        (week(job("a", minutes=60.005)), ()),
        (week(job("a", minutes=1 / 3)), ("jobs[0].minutes: rounded to a tenth of a second",)),
        (week(job("a", minutes=60.0001)), ("jobs[0].minutes: rounded to a tenth of a second",)),
        (
            week(job("a", windows=[window(), FINE])),
            ("jobs[0].windows[1].start: rounded to a tenth of a second",),
        ),
        (
            week(job("a", fixed={"shift": "mon", "start": "2026-03-02T09:00:00.01Z"})),
            ("jobs[0].fixed.start: rounded to a tenth of a second",),
        ),
        (
            week(shifts=[shift(meal=MEAL, max_work_minutes=600.00001)]),
            (
                "shifts[0].max_work_minutes: rounded to a tenth of a second",
                "shifts[0].meal.minutes: rounded to a tenth of a second",
                "shifts[0].meal.latest: rounded to a tenth of a second",
            ),
        ),
        (week(travel=matrix(step=1.00001)), ("travel.minutes: rounded to a tenth of a second",)),
        (week(travel=matrix(km=1.0001)), ("travel.km: rounded to a metre",)),
    ],
)
def test_each_figure_finer_than_the_grain_is_named_once(problem, notes):
    assert read_problem(json.dumps(problem)).notes == notes


def test_a_window_just_as_long_as_its_job_stays_so():
    late = {"start": "2026-03-02T09:00:00.05Z", "end": "2026-03-02T10:00:00.05Z"}
    (read,) = read_problem(json.dumps(week(job("a", windows=[late])))).jobs
    assert read.windows[0].end - read.windows[0].start == read.length
