"""The cheapest way with one other visit moved, by trying every such way with brute force."""

from hypothesis import given

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.reasons.making_room.test_by_others import swaps
from tests.visits.domain.planning.reasons.weeks_in_hand import FEW, NEVER, InHand, cost, ways_in
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.one_moved import with_one_moved


@FEW
@given(small_weeks(most_jobs=4, least_jobs=2))
def test_no_way_with_one_other_moved_is_cheaper(problem):
    in_hand = InHand(problem)
    said = dict(with_one_moved(in_hand.board, in_hand.week))
    for at, order in enumerate(in_hand.week):
        for each in order:
            rest = tuple(tuple(one for one in own if one != each) for own in in_hand.week)
            saved = cost(problem, at, order) - cost(problem, at, rest[at])
            alone = [shift for _, shift, _ in ways_in(problem, rest, each) if shift != at]
            stays = "fixed" in problem["jobs"][each] or saved == -NEVER or alone
            tried = [extra for extra, _ in swaps(problem, rest, each, closed=at)] if not stays else []
            best = min(tried, default=NEVER)
            assert bool(said[each]) == (best < NEVER)
            assert not said[each] or abs(said[each][0].figures["more"] - (best - saved)) < 0.02


def test_both_new_places_are_told():
    days = [shift(), shift(id="ben", crew="ben", cost_fixed=7)]
    long = {"minutes": 500, "windows": [window("07:00", "17:30")]}
    made = board(week(job("a", **long), job("b", **long, crews=["ann", "ben"]), shifts=days))
    (reason,) = dict(with_one_moved(made, ((0,), (1,))))[0]
    named = {
        key: reason.figures[key] for key in ("shift", "start", "other", "other_shift", "other_start", "more")
    }
    assert named == {
        "shift": "ben",
        "start": monday("07:20"),
        "other": "b",
        "other_shift": "mon",
        "other_start": monday("07:20"),
        "more": 0,
    }
