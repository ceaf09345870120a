"""More minutes never make anything impossible: what halving rests on."""

from hypothesis import given
from hypothesis import strategies as st

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, InHand, inserted
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.making_room.limits import LIMITS, PROMISE_LIMITS
from visits.domain.planning.reasons.making_room.relaxed import relaxed_timing


@MANY
@given(small_weeks(most_jobs=4, least_jobs=1), st.data())
def test_what_fits_with_fewer_minutes_fits_with_more(problem, data):
    in_hand = InHand(problem)
    job = data.draw(st.integers(0, len(in_hand.names) - 1))
    at = data.draw(st.integers(0, len(in_hand.week) - 1))
    rest = tuple(each for each in in_hand.week[at] if each != job)
    order = data.draw(st.sampled_from(inserted(rest, job)))
    for limit in (*LIMITS, *PROMISE_LIMITS):
        seen = False
        for minutes in range(0, 241, 15):
            changed = limit.change(in_hand.board.problem, at, job, minutes)
            fits = changed is not None and relaxed_timing(in_hand.board, changed, at, order) is not None
            assert fits or not seen, limit.code
            seen = fits


def test_a_meal_and_a_visit_shrink_no_further_than_they_can():
    meal = {"minutes": 30, "earliest": monday("12:00"), "latest": monday("13:00")}
    problem = board(week(job("a", minutes=50), shifts=[shift(meal=meal)])).problem
    by_code = {limit.code: limit.change for limit in LIMITS}
    assert by_code["meal"](problem, 0, 0, 31).shifts[0].meal.length == 0
    assert by_code["shorter-visit"](problem, 0, 0, 240).jobs[0].length == 25 * 600
    assert by_code["work-limit"](problem, 0, 0, 10) is None


def test_a_promise_moved_stays_on_its_shift_and_in_its_open_hours():
    kept = job("a", fixed={"shift": "mon", "start": monday("09:00")}, windows=[window("08:30", "10:10")])
    problem = board(week(kept, shifts=[shift(), shift(id="ben", crew="ben")])).problem
    later, earlier = (limit.change for limit in PROMISE_LIMITS)
    (span,) = later(problem, 0, 0, 60).jobs[0].windows
    assert (span.end - span.start) == 70 * 600
    (span,) = earlier(problem, 0, 0, 60).jobs[0].windows
    assert (span.end - span.start) == 90 * 600
    assert later(problem, 1, 0, 60) is None
