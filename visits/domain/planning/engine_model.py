"""A week as a routing engine sees it: points, groups, vans, and the open arcs of each shift. Plain integers.

Arcs that a rule forbids (a closed day, hygiene falling, two patterns of one job) are simply not listed.
Costs are money x SCALE; lateness and the fixed cost of a shift ride on the arcs.
"""

from dataclasses import dataclass

from visits.domain.planning.board import Board
from visits.domain.planning.engine_nodes import (
    AFTER,
    BEFORE,
    MEAL,
    VISIT,
    Node,
    meal_nodes,
    shift_zero,
    visit_nodes,
)

SCALE = 3600
"""Makes an hourly rate a whole number of cost per decisecond to a tenth of a minor unit."""

Arcs = dict[tuple[int, int], tuple[int, int]]
"""(from, to) -> (cost, deciseconds); point 0 is the shift's base, point i + 1 is node i."""


@dataclass(frozen=True)
class EngineModel:
    """`groups` pairs the indexes of nodes that exclude each other with the job, or None for a meal."""

    board: Board
    nodes: list[Node]
    groups: list[tuple[list[int], int | None]]
    arcs: list[Arcs]
    zeros: list[int]


def engine_entries(board: Board) -> int:
    """How many arcs the engine's tables will hold: it keeps one for each pair of points in each shift."""
    visits, shifts = visit_nodes(board), range(len(board.problem.shifts))
    nodes = len(visits) + sum(1 for shift in shifts for _ in meal_nodes(board, shift, visits))
    return nodes * nodes * len(shifts)


def engine_model(board: Board) -> EngineModel:
    """The model of the board's problem."""
    visits = visit_nodes(board)
    nodes = list(visits)
    groups: list[tuple[list[int], int | None]] = []
    for job in range(len(board.problem.jobs)):
        own = [at for at, node in enumerate(visits) if node.job == job]
        if own:
            groups.append((own, job))
    for shift in range(len(board.problem.shifts)):
        meals = list(meal_nodes(board, shift, visits))
        if meals:
            groups.append((list(range(len(nodes), len(nodes) + len(meals))), None))
            nodes += meals
    arcs = [_arcs(board, shift, nodes) for shift in range(len(board.problem.shifts))]
    zeros = [shift_zero(board, shift) for shift in board.problem.shifts]
    return EngineModel(board, nodes, groups, arcs, zeros)


def _arcs(board: Board, shift: int, nodes: list[Node]) -> Arcs:
    here = [
        (at + 1, node, dict(node.late))
        for at, node in enumerate(nodes)
        if any(s == shift for s, _ in node.late)
    ]
    arcs: Arcs = {}
    van = board.problem.shifts[shift]
    start = 0.0 if van.meal is None else van.cost_fixed
    for at, node, late in here:
        if node.kind != AFTER:
            first = start if node.kind != BEFORE else 0.0
            arcs[0, at] = _arc(board, shift, None, node, late[shift] + first)
        arcs[at, 0] = _arc(board, shift, node, None, 0.0)
        for other, following, later in here:
            if other != at and _may_follow(node, following) and _can_be_driven(board, shift, node, following):
                extra = later[shift] + (start if node.kind == BEFORE else 0.0)
                arcs[at, other] = _arc(board, shift, node, following, extra)
    return arcs


def _can_be_driven(board: Board, shift: int, node: Node, following: Node) -> bool:
    """False where a matrix says "no road" by a drive longer than the shift: its price would drown all others."""
    van = board.problem.shifts[shift]
    return board.problem.travel.times[node.place][following.place] <= van.end - van.start


def _may_follow(node: Node, following: Node) -> bool:
    if node.kind == AFTER or following.kind == BEFORE:
        return False
    if node.kind == BEFORE:
        return following.kind == VISIT
    if following.kind in (AFTER, MEAL):
        return node.kind == VISIT and (following.kind == AFTER or node.level <= following.level)
    return node.level <= following.level and (node.job is None or node.job != following.job)


def _arc(board: Board, shift: int, start: Node | None, end: Node | None, extra: float) -> tuple[int, int]:
    """Cost and deciseconds of driving from one point to the next; None is the base."""
    problem = board.problem
    base = problem.shifts[shift].place
    a, b = base if start is None else start.place, base if end is None else end.place
    road = problem.travel.metres[a][b] / 1000 * problem.shifts[shift].cost_per_km
    return round((road + extra) * SCALE), problem.travel.times[a][b]
