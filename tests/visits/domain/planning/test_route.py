from tests.visits.domain.planning.hand_made import board, job, week
from visits.domain.planning.openings import Opening
from visits.domain.planning.route import earliest

TWO = (Opening(0, 10, 0.0), Opening(20, 30, 1.0))


def test_the_first_opening_that_is_not_over_is_taken():
    assert [earliest(TWO, ready) for ready in (-5, 10, 11, 30, 31)] == [TWO[0], TWO[0], TWO[1], TWO[1], None]


def test_a_route_adds_up_its_drives_and_jobs():
    route = board(week(job("a"), job("b", "far"))).route(0, (0, 1))
    assert route.nonstop == (20 + 60 + 40 + 60 + 60) * 600
    assert route.hour_rate == 2400 / 36_000
    assert route.least_late == 0
