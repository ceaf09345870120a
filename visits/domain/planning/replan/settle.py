"""The last strokes: needless changes undone, and what then finds room put in."""

from visits.domain.planning.board import Board, Week
from visits.domain.planning.insertion import insert_all
from visits.domain.planning.replan.put_back import put_back


def settle(board: Board, week: Week, before: Week) -> Week:
    """`week` with changes that are not worth their price taken back, and with each visit put in that finds a spot.

    A visit that goes back leaves room where it was; so both are done in turn until nothing changes. Never dearer.
    """
    while True:
        back = put_back(board, week, before)
        planned = {job for order in back for job in order}
        waiting = [job for job in range(len(board.problem.jobs)) if job not in planned]
        waiting.sort(key=lambda job: -board.out_cost(job))
        filled = tuple(insert_all(board, back, waiting))
        if filled == back:
            return back
        week = filled
