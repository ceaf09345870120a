"""The hours of one round once a job has its place in it: as few others as can be get another hour."""

from collections.abc import Mapping

from visits.domain.planning.board import Board
from visits.domain.planning.lay_out import lay_out
from visits.domain.planning.offers.held_board import held_board
from visits.domain.planning.offers.offer import Place
from visits.domain.planning.plan import PlannedShift

Spans = Mapping[int, tuple[int, int]]


def settle(board: Board, place: Place, spans: Spans, stood: Mapping[int, int]) -> PlannedShift | None:
    """The round of `place` timed at least cost with the jobs of `spans` held to their spans, or None.

    `stood` holds the starts of jobs as they stood (deciseconds): all of them are kept if that can be, else as many
    as can be, taken in the order of the round.
    """
    before = {job: (stood[job], stood[job]) for job in place.order if job in stood and job not in spans}
    whole = _timed(board, place, {**spans, **before})
    if whole is not None:
        return whole
    kept: dict[int, tuple[int, int]] = dict(spans)
    found = _timed(board, place, kept)
    for job, span in before.items():
        if found is None:
            return None
        tried = _timed(board, place, {**kept, job: span})
        if tried is not None:
            found, kept = tried, {**kept, job: span}
    return found


def _timed(board: Board, place: Place, spans: Spans) -> PlannedShift | None:
    held = held_board(board, place.shift, spans)
    timing = held.timing(place.shift, place.order)
    return None if timing is None else lay_out(held, place.shift, place.order, timing)
