from visits.domain.planning.offers.lane import Lane, LaneEnd, LaneStop

STOPS = [LaneStop([(10, 20)], 5, 3), LaneStop([(30, 40)], 5, 4)]


def back(ways, ready):
    """The earliest end over the ways."""
    ends = [
        ready + add if flows else add
        for way in ways
        for first, last, add, flows in way
        if first <= ready <= last
    ]
    return min(ends, default=None)


def test_without_a_meal_the_round_ends_after_the_last_gate():
    made = Lane(STOPS, LaneEnd(60, 60), None)
    assert (back([made.fed[0]], 0), back([made.fed[0]], 20), back([made.fed[0]], 21)) == (39, 39, None)
    assert back([made.fed[1]], 38) == 47
    assert made.last_ready(0) == 20
    assert made.hungry == [[], [], []]


def test_the_end_limits_the_last_stop():
    assert Lane(STOPS, LaneEnd(45, 45), None).last_ready(1) == 36
    assert Lane(STOPS, LaneEnd(38, 38), None).last_ready(0) is None


def test_a_meal_falls_where_it_costs_least():
    made = Lane(STOPS, LaneEnd(60, 20), (6, 15, 32))
    # between the two stops there is time for it: the round ends as it would without
    assert back(made.hungry[0], 0) == 39
    # from the second stop on it comes after the first moment allowed there is past
    assert back(made.hungry[1], 31) is None
    assert back(made.hungry[2], 20) == 20
