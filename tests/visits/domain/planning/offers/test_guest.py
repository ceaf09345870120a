from dataclasses import replace

from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.board import Board
from visits.domain.planning.offers.guest import board_with, guest_of


def test_a_board_with_one_job_more_is_the_board_of_the_problem_with_it():
    whole = board(week(job("a"), job("new", crews=["ben"]), shifts=[shift(), shift(id="m2", crew="ben")]))
    *known, new = whole.problem.jobs
    wider, guest = board_with(Board(replace(whole.problem, jobs=tuple(known))), new)
    assert (guest.at, wider.problem) == (1, whole.problem)
    assert (wider.openings, wider.homes) == (whole.openings, whole.homes)
    assert guest == guest_of(whole, 1)


def test_the_board_itself_does_not_learn_of_the_guest():
    plain = board(week(job("a")))
    wider, guest = board_with(plain, plain.problem.jobs[0])
    wider.cost(0, (0, guest.at))
    assert plain.known == {}
    assert (len(plain.problem.jobs), len(plain.openings[0]), len(plain.homes)) == (1, 1, 1)
