from tests.visits.domain.planning.hand_made import board, job, monday, week, window
from visits.domain.planning.reasons.making_room.placed import placed


def test_the_place_is_told_by_shift_hours_and_the_job_before_it():
    made = board(week(job("a", windows=[window("07:00", "08:20")]), job("b", "middle")))
    assert placed(made, made.problem, 0, (0, 1), 1) == {
        "shift": "mon",
        "start": monday("08:40"),
        "finish": monday("09:40"),
        "behind": "a",
    }
    assert placed(made, made.problem, 0, (0, 1), 0)["behind"] is None
