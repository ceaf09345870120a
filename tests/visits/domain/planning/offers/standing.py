"""What the tests of offers share: a hand-made week, random weeks, and offers by re-timing every order."""

import json
from dataclasses import replace
from math import inf

from hypothesis import assume
from hypothesis import strategies as st

from tests.visits.domain.planning.hand_made import board
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.insertion import insert_all
from visits.domain.planning.offers.guest import board_with
from visits.domain.planning.offers.standing_week import StandingWeek
from visits.domain.planning.openings import Opening
from visits.domain.planning.read_problem import read_problem


def standing(problem, *orders):
    """The hand-made `problem` whose last job is the new one, standing in `orders`; (week, new job)."""
    whole = board(problem)
    *known, new = whole.problem.jobs
    return StandingWeek(Board(replace(whole.problem, jobs=tuple(known))), orders), new


@st.composite
def standing_weeks(draw, most_jobs=6):
    """A random small week that stands without breaking a rule, and a new job without a promise."""
    problem = read_problem(json.dumps(draw(small_weeks(most_jobs))))
    assume(len(problem.jobs) > 1)
    *known, new = problem.jobs
    board_of_known = Board(replace(problem, jobs=tuple(known)))
    order = draw(st.permutations(range(len(known))))
    week = insert_all(board_of_known, [() for _ in problem.shifts], order)
    return StandingWeek(board_of_known, week), replace(new, fixed=None)


def by_hand(week, job):
    """(shift, order) -> added weight, of every order with the job in it that can be timed: nothing left out."""
    board_of_all, guest = board_with(week.board, job)
    found = {}
    for shift, order in enumerate(week.week):
        for at in range(len(order) + 1):
            longer = (*order[:at], guest.at, *order[at:])
            if guest.openings[shift] and (cost := board_of_all.cost(shift, longer)) < inf:
                found[shift, longer] = cost - week.board.cost(shift, tuple(order))
    return found


def can_start(route, at, start):
    """Whether stop `at` of the route can begin at just that moment, by the timing that planning uses."""
    late = [opening.late for opening in route.starts[at] if opening.first <= start <= opening.last]
    if not late:
        return None
    return replace(
        route, starts=(*route.starts[:at], (Opening(start, start, late[0]),), *route.starts[at + 1 :])
    )


def every_move(week_of, job_asked):
    """(shift, its order, moved job) -> least added weight, by trying every other job in every other place."""
    board, guest = board_with(week_of.board, job_asked)
    stood = [board.cost(at, tuple(order)) for at, order in enumerate(week_of.week)]
    found = {}
    able = [(at, order) for at, order in enumerate(week_of.week) if guest.openings[at]]
    for here, order, other in [(at, order, other) for at, order in able for other in week_of.movable(at)]:
        rest = tuple(each for each in order if each != other)
        for longer in with_one_more(rest, guest.at):
            away = board.cost(here, longer) - stood[here]
            keep_least(found, (here, longer, other), away + least_elsewhere(board, week_of, here, other))
            for both in with_one_more(longer, other):
                if tuple(each for each in both if each != guest.at) != tuple(order):
                    keep_least(found, (here, both, None), board.cost(here, both) - stood[here])
    return {key: cost for key, cost in found.items() if cost < inf}


def with_one_more(order, job_at):
    return [(*order[:at], job_at, *order[at:]) for at in range(len(order) + 1)]


def least_elsewhere(board, week_of, here, other):
    costs = [
        board.cost(at, longer) - board.cost(at, tuple(order))
        for at, order in enumerate(week_of.week)
        for longer in with_one_more(order, other)
        if at != here and board.openings[at][other]
    ]
    return min(costs, default=inf)


def keep_least(found, key, cost):
    found[key] = min(cost, found.get(key, inf))
