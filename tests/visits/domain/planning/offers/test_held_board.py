from tests.visits.domain.planning.hand_made import board, job, week
from visits.domain.planning.offers.held_board import held_board


def test_a_held_start_is_the_only_one():
    plain = board(week(job("a")))
    late = plain.openings[0][0][0].last - 12_000
    held = held_board(plain, 0, {0: (late - 600, late)})
    assert [(opening.first, opening.last) for opening in held.openings[0][0]] == [(late - 600, late)]
    assert held.cost(0, (0,)) == plain.cost(0, (0,))
    assert held.timing(0, (0,)).leave == late - 600 - 12_000


def test_a_start_that_cannot_be_leaves_nothing():
    plain = board(week(job("a")))
    late = plain.openings[0][0][0].last
    assert held_board(plain, 0, {0: (late + 1, late + 2)}).openings[0][0] == ()
    assert plain.openings[0][0] != ()
