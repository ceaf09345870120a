"""The one file that knows HiGHS (1.16): choose columns so that each row is kept, least cost.

A column is a day out of one shift, or a job left out; a row is a job (done once or left out), a shift (used once
at most), or a limit on what may be left out. HiGHS runs on one thread with a fixed seed: the same model gives the
same answer, unless the clock ends it. It is loaded only when a model is made, and lets go of the interpreter.
"""

from collections.abc import Sequence
from importlib import import_module
from math import inf
from types import ModuleType
from typing import NamedTuple

SEED = 1
TINY = 1e-6
SLIP = 1e-2
"""Costs of a choice and its bound that lie further apart are no rounding."""


class Column(NamedTuple):
    """Cost, and weight by row; the share taken lies between 0 and `most`."""

    cost: float
    rows: tuple[int, ...]
    weights: tuple[float, ...]
    most: float = 1.0


class Relaxed(NamedTuple):
    """The cheapest shares of columns: cost, price of each row, share of each column."""

    cost: float
    prices: list[float]
    shares: list[float]


class Chosen(NamedTuple):
    """Columns of the best whole choice found, and a cost that no whole choice undercuts."""

    columns: list[int]
    bound: float


class CoverModel:
    """Rows are given at the start, columns at any time; the relaxed model warm-starts from its last answer."""

    def __init__(self, least: Sequence[float], most: Sequence[float]) -> None:
        self.numbers: ModuleType = import_module("numpy")
        self.engine: ModuleType = import_module("highspy")
        self.rows = len(least)
        self.columns: list[Column] = []
        # because: the fuller class says hello on standard output
        self.solver = self.engine._Highs()
        self._set(output_flag=False, threads=1, random_seed=SEED, parallel="off")
        none = self.numbers.zeros(0)
        low, high = self._money(least), self._money(most)
        self.solver.addRows(self.rows, low, high, 0, self._whole([0] * self.rows), self._whole([]), none)

    def add(self, columns: Sequence[Column]) -> None:
        """More columns to choose from."""
        if not columns:
            return
        self.columns.extend(columns)
        starts, total = [], 0
        for column in columns:
            starts.append(total)
            total += len(column.rows)
        self.solver.addCols(
            len(columns),
            self._money([column.cost for column in columns]),
            self._money([0.0] * len(columns)),
            self._money([column.most for column in columns]),
            total,
            self._whole(starts),
            self._whole([row for column in columns for row in column.rows]),
            self._money([weight for column in columns for weight in column.weights]),
        )

    def relaxed(self, seconds: float) -> Relaxed | None:
        """The best shares, or None where the clock was faster or the rows cannot be kept."""
        self._run_for(seconds)
        if not self._is_optimal():
            return None
        answer = self.solver.getSolution()
        cost = self.solver.getInfo().objective_function_value
        return Relaxed(cost, list(answer.row_dual), list(answer.col_value))

    def chosen(self, start: Sequence[int], seconds: float, nodes: int | None = None) -> Chosen:
        """The best whole choice found. `start` is a choice that keeps the rows. With `nodes` the search ends after
        so many branches instead of by the clock."""
        size = len(self.columns)
        whole = self.numbers.full(size, int(self.engine.HighsVarType.kInteger), dtype=self.numbers.uint8)
        self.solver.changeColsIntegrality(size, self._whole(range(size)), whole)
        self._set(mip_rel_gap=0.0, mip_abs_gap=TINY, mip_max_nodes=2**31 - 1 if nodes is None else nodes)
        self.solver.setSolution(len(start), self._whole(start), self._money([1.0] * len(start)))
        self._run_for(seconds if nodes is None else inf)
        if self._is_optimal() and self._cost(self._taken()) > self._bound() + SLIP:
            # because: a start that presolve has cut away is at times reckoned below its cost (HiGHS 1.16), and what
            # is better than it is then passed over
            self.solver.clearSolver()
            self._run_for(seconds if nodes is None else inf)
        taken = self._taken()
        return Chosen(taken or list(start), self._bound() if taken else -inf)

    def _taken(self) -> list[int]:
        answer = self.solver.getSolution()
        return [at for at, share in enumerate(answer.col_value) if share > 0.5] if answer.value_valid else []

    def _cost(self, taken: Sequence[int]) -> float:
        return sum(self.columns[at].cost for at in taken)

    def _bound(self) -> float:
        return float(self.solver.getInfo().mip_dual_bound)

    def _is_optimal(self) -> bool:
        return bool(self.solver.getModelStatus() == self.engine.HighsModelStatus.kOptimal)

    def _run_for(self, seconds: float) -> None:
        # because: the engine's clock runs on from one run to the next
        self._set(time_limit=self.solver.getRunTime() + max(0.0, seconds))
        self.solver.run()

    def _set(self, **options: float | bool | str) -> None:
        for name, value in options.items():
            self.solver.setOptionValue(name, value)

    def _money(self, values: Sequence[float]) -> object:
        return self.numbers.array(values, dtype=self.numbers.float64)

    def _whole(self, values: Sequence[int]) -> object:
        return self.numbers.array(values, dtype=self.numbers.int32)
