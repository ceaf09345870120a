"""The one file that knows PyVRP (0.14): builds its data from an engine model, searches, reads routes back.

PyVRP is loaded only when a search begins. Its search lets go of the interpreter, so several seeds run at once;
it repeats by seed and iterations.
"""

from collections.abc import Callable
from importlib import import_module
from types import ModuleType
from warnings import filterwarnings

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.engine_model import SCALE, Arcs, EngineModel
from visits.domain.planning.engine_start import start_nodes

COW = 100
"""Load per cow: lets the engine's price on overload, which has a ceiling per unit, weigh against the clock's."""

MOST_PENALTY = 5_000
"""Ceiling of the engine's price on a decisecond late: twenty times a usual wage. Measured best of 5 to 100 thousand."""

Stop = Callable[[float], bool]
"""Asked before every step with the engine's best cost; true ends the search."""


class EngineSearch:
    """A week made ready for the engine; `run` may be called from several threads."""

    def __init__(self, model: EngineModel, start: Week) -> None:
        self.model = model
        self.start = start
        self.engine: ModuleType = import_module("pyvrp")
        # because: a hard week is no news for the user, and the engine says so on standard error
        filterwarnings("ignore", category=self.engine.exceptions.PenaltyBoundWarning)
        self.way = self.engine.SolveParams(penalty=self.engine.PenaltyParams(max_penalty=MOST_PENALTY))
        self.numbers: ModuleType = import_module("numpy")
        self.bases = sorted({shift.place for shift in model.board.problem.shifts})
        self.data = self._data()

    def run(self, seed: int, stop: Stop) -> Week:
        """The orders of the engine's best plan, one per shift; may leave jobs out or break a rule."""
        routes = [
            self.engine.Route(self.data, [self._call(node) for node in nodes], shift)
            for shift, nodes in start_nodes(self.model, self.start)
        ]
        first = self.engine.Solution(self.data, routes)
        found = self.engine.solve(self.data, stop, seed, False, False, self.way, first)
        orders: list[Order] = [() for _ in self.model.board.problem.shifts]
        for route in found.best.routes():
            calls = [step.idx for step in route if step.is_client()]
            jobs = [self.model.nodes[call].job for call in calls]
            orders[route.vehicle_type()] = tuple(job for job in jobs if job is not None)
        return tuple(orders)

    def _call(self, node: int) -> object:
        return self.engine.Activity(self.engine.ActivityType.CLIENT, node)

    def _data(self) -> object:
        engine, shifts = self.engine, self.model.board.problem.shifts
        size = len(self.bases) + len(self.model.nodes)
        tables = [self._tables(at, size) for at in range(len(shifts))]
        return engine.ProblemData(
            locations=[engine.Location(0, 0) for _ in range(size)],
            clients=self._clients(),
            depots=[engine.Depot(location=at) for at in range(len(self.bases))],
            vehicle_types=[self._van(at) for at in range(len(shifts))],
            distance_matrices=[cost for cost, _ in tables],
            duration_matrices=[time for _, time in tables],
            groups=[
                engine.ClientGroup(clients=nodes, required=self._must(job))
                for nodes, job in self.model.groups
                if len(nodes) > 1
            ],
        )

    def _must(self, job: int | None) -> bool:
        """Required only where the start keeps it: a week that is overfull must stay solvable."""
        board = self.model.board
        return job is None or (
            board.out_cost(job) >= board.missing_price and any(job in order for order in self.start)
        )

    def _clients(self) -> list[object]:
        nodes, jobs = self.model.nodes, self.model.board.problem.jobs
        group = {node: at for at, (own, _) in enumerate(self._groups()) for node in own}
        clients = []
        for at, node in enumerate(nodes):
            alone = at not in group
            cows = 0 if node.job is None else jobs[node.job].cows
            clients.append(
                self.engine.Client(
                    location=len(self.bases) + at,
                    delivery=[cows * COW],
                    service_duration=node.length,
                    tw_early=max(0, node.first),
                    tw_late=max(0, node.first, node.last),
                    prize=self._prize(node.job),
                    required=alone and self._must(node.job),
                    group=group.get(at),
                )
            )
        return clients

    def _groups(self) -> list[tuple[list[int], int | None]]:
        return [(own, job) for own, job in self.model.groups if len(own) > 1]

    def _prize(self, job: int | None) -> int:
        board = self.model.board
        if job is None or self._must(job):
            return 0
        return round(min(board.out_cost(job), _dear(board)) * SCALE)

    def _all_cows(self) -> int:
        return 1 + COW * sum(job.cows for job in self.model.board.problem.jobs)

    def _van(self, at: int) -> object:
        shift, zero = self.model.board.problem.shifts[at], self.model.zeros[at]
        work = shift.end - shift.start if shift.max_work is None else shift.max_work
        return self.engine.VehicleType(
            capacity=[self._all_cows() if shift.max_cows is None else shift.max_cows * COW],
            start_depot=self.bases.index(shift.place),
            end_depot=self.bases.index(shift.place),
            fixed_cost=round(shift.cost_fixed * SCALE) if shift.meal is None else 0,
            tw_early=shift.start - zero,
            tw_late=shift.end - zero,
            shift_duration=work,
            unit_duration_cost=round(shift.cost_per_hour * SCALE / 36_000),
            profile=at,
        )

    def _tables(self, at: int, size: int) -> tuple[object, object]:
        """Cost and time of every arc in one shift; arcs that are not open are dear and longer than the shift."""
        arcs: Arcs = self.model.arcs[at]
        shift, bases = self.model.board.problem.shifts[at], len(self.bases)
        dear = 10 * max((cost for cost, _ in arcs.values()), default=0) + SCALE
        cost = self.numbers.full((size, size), dear, dtype="int64")
        time = self.numbers.full((size, size), shift.end - shift.start + 1, dtype="int64")
        base = self.bases.index(shift.place)
        for (a, b), (price, length) in arcs.items():
            row, column = (base if a == 0 else bases + a - 1), (base if b == 0 else bases + b - 1)
            cost[row, column], time[row, column] = price, length
        self.numbers.fill_diagonal(cost, 0)
        self.numbers.fill_diagonal(time, 0)
        return cost, time


def _dear(board: Board) -> float:
    """A price for a missing job above any detour, but not so high that the engine's penalties drown in it."""
    shifts = board.problem.shifts
    far = max((max(row) for row in board.problem.travel.metres), default=0) / 1000
    day = max((s.cost_fixed + (s.end - s.start) / 36_000 * s.cost_per_hour for s in shifts), default=0.0)
    out = max((job.leave_out_cost or 0.0 for job in board.problem.jobs), default=0.0)
    return 2 * (day + 2 * far * max((s.cost_per_km for s in shifts), default=0.0)) + out + 1
