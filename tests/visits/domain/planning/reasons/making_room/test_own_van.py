"""A van of its own would really do: tried as one more shift, by brute force."""

from hypothesis import given

from tests.visits.domain.planning.brute_force import cheapest_round
from tests.visits.domain.planning.hand_made import board, job, monday, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, InHand
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.making_room.own_van import van_of_its_own


@MANY
@given(small_weeks(most_jobs=3, least_jobs=1))
def test_a_shift_of_just_those_hours_holds_the_visit(problem):
    in_hand = InHand(problem)
    for at, each in enumerate(problem["jobs"]):
        told = van_of_its_own(in_hand.board, at, 0).figures
        free = {key: value for key, value in each.items() if key != "fixed"}
        if "fixed" not in each and told["leave"]:
            own = {"id": "own", "crew": "x", "base": "yard", "start": told["leave"], "end": told["back"]}
            assert cheapest_round(problem, own, [free]) is not None
            assert own["end"] > own["start"] or told["minutes"] == 0


def test_the_first_open_hours_that_are_long_enough_are_taken():
    made = board(week(job("a", windows=[window("07:00", "07:30"), window("12:00", "14:00")])))
    assert van_of_its_own(made, 0, 3).figures == {
        "minutes": 100,
        "leave": monday("11:40"),
        "back": monday("13:20"),
        "other_ways": 3,
    }


def test_where_no_hours_are_long_enough_only_the_length_is_told():
    made = board(week(job("a", windows=[window("07:00", "07:30")])))
    told = van_of_its_own(made, 0, 0).figures
    assert (told["minutes"], told["leave"], told["back"]) == (100, None, None)


def test_without_a_shift_there_is_no_van():
    made = board(week(job("a")) | {"shifts": []})
    assert van_of_its_own(made, 0, 0).figures["minutes"] is None
