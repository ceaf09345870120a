"""A board, its arrays and an empty desk, and orders drawn from it."""

import json
from random import Random

import numpy as np

from visits.domain.planning.board import Board
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.swift.arrays import week_arrays
from visits.domain.planning.swift.machine_desk import make_desk


def at_the_desk(problem, seed=1, pool=256):
    board = problem if isinstance(problem, Board) else Board(read_problem(json.dumps(problem)))
    shifts, jobs = len(board.problem.shifts), len(board.problem.jobs)
    return board, week_arrays(board), make_desk(shifts, jobs, seed, pool)


def drawn_orders(board, seed, count, longest=6):
    """Random orders, half of them by rising hygiene so that more of them can be done."""
    dice, jobs = Random(seed), board.problem.jobs
    for _ in range(count if jobs and board.problem.shifts else 0):
        order = dice.sample(range(len(jobs)), dice.randint(1, min(longest, len(jobs))))
        if dice.random() < 0.7:
            order.sort(key=lambda job: jobs[job].hygiene)
        yield dice.randrange(len(board.problem.shifts)), tuple(order)


def whole(order):
    return np.array(order, dtype=np.int64)


def empty_orders(board):
    shifts, jobs = len(board.problem.shifts), len(board.problem.jobs)
    return np.zeros((shifts, jobs + 1), np.int64), np.zeros(shifts, np.int64)


def present_week(desk):
    return tuple(
        tuple(int(j) for j in desk.order[0, s, : desk.now[0, s, 0]]) for s in range(desk.now.shape[1])
    )
