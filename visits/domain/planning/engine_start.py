"""A week already found, as the points a routing engine would call at."""

from visits.domain.planning.board import Order, Week
from visits.domain.planning.engine_model import EngineModel
from visits.domain.planning.engine_nodes import AFTER, BEFORE, MEAL
from visits.domain.planning.lay_out import lay_out


def start_nodes(model: EngineModel, week: Week) -> list[tuple[int, list[int]]]:
    """(shift, nodes in order) for every shift that is used or has a meal group to satisfy."""
    calls = [(shift, _calls(model, shift, order)) for shift, order in enumerate(week)]
    return [(shift, nodes) for shift, nodes in calls if nodes]


def _calls(model: EngineModel, shift: int, order: Order) -> list[int]:
    board = model.board
    timing = board.timing(shift, order) if order else None
    if timing is None:
        return _meal(model, shift, BEFORE, None)
    stops = lay_out(board, shift, order, timing).stops
    calls = [
        _visit(model, shift, job, stop.start - model.zeros[shift])
        for job, stop in zip(order, stops, strict=True)
    ]
    at, last = timing.meal_leg, len(order)
    if at < 0:
        return _meal(model, shift, BEFORE, None) + calls
    if at > last:
        return calls + _meal(model, shift, AFTER, None)
    place = board.problem.jobs[order[min(at, last - 1)]].place
    return calls[:at] + _meal(model, shift, MEAL, place) + calls[at:]


def _visit(model: EngineModel, shift: int, job: int, start: int) -> int:
    for at, node in enumerate(model.nodes):
        if node.job == job and node.first <= start <= node.last and any(s == shift for s, _ in node.late):
            return at
    raise AssertionError("a timed stop lies in no pattern of its job")


def _meal(model: EngineModel, shift: int, kind: str, place: int | None) -> list[int]:
    """The one meal node of that kind; nothing where the shift has no meal."""
    for at, node in enumerate(model.nodes):
        if node.kind == kind and node.late[0][0] == shift and place in (None, node.place):
            return [at]
    return []
