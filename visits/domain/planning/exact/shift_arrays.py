"""One shift of a week as flat arrays, the way the compiled labels read it."""

from importlib import import_module
from types import ModuleType
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from visits.domain.planning.board import Board
from visits.domain.planning.leave_times import gone_too_late
from visits.domain.planning.problem import Shift

if TYPE_CHECKING:
    from numpy import float64, int64
    from numpy.typing import NDArray

Ints: TypeAlias = "NDArray[int64]"
Floats: TypeAlias = "NDArray[float64]"

NO_LIMIT = 2**60
SHORTEST = 1e-9


class ShiftArrays(NamedTuple):
    """N jobs; row and column N are the base. Deciseconds count from the shift's start; int64 unless said otherwise."""

    drive: Ints  # (N + 1, N + 1)
    soonest: Ints  # (N + 1, N + 1) least time between two stops by any way round, work there not counted
    road: Floats  # (N + 1, N + 1), money
    length: Ints  # (N,)
    cows: Ints
    level: Ints
    open_at: Ints  # (N + 1,) openings of job j are the entries from open_at[j] up to open_at[j + 1]
    open_first: Ints
    open_last: Ints
    open_late: Floats  # money
    closes: Ints  # (N,) last start of all; -1 where there is none
    end: int
    most_work: int
    most_cows: int
    cow_pace: float  # no crew does more cows in a decisecond, the drive to them counted
    meal: int  # length; -1 where there is none
    earliest: int
    latest: int
    fed_leave: int  # who leaves from here on needs no meal on the way
    fixed: float
    rate: float  # money per decisecond


def shift_arrays(board: Board, at: int) -> ShiftArrays:
    """The arrays of the shift with that index."""
    np = import_module("numpy")
    problem, shift = board.problem, board.problem.shifts[at]
    stops = [*(job.place for job in problem.jobs), shift.place]
    drive = _table(np, problem.travel.times, stops)
    openings = [(each, option) for each, options in enumerate(board.openings[at]) for option in options]
    sizes = [len(options) for options in board.openings[at]]
    meal, zero = shift.meal, shift.start
    return ShiftArrays(
        drive=drive,
        soonest=_soonest(np, drive),
        road=_table(np, problem.travel.metres, stops) / 1000 * shift.cost_per_km,
        length=_whole(np, [job.length for job in problem.jobs]),
        cows=_whole(np, [job.cows for job in problem.jobs]),
        level=_whole(np, [job.hygiene for job in problem.jobs]),
        open_at=_whole(np, [0, *np.cumsum(sizes)]),
        open_first=_whole(np, [option.first - zero for _, option in openings]),
        open_last=_whole(np, [option.last - zero for _, option in openings]),
        open_late=np.array([option.late for _, option in openings], dtype=np.float64),
        closes=_whole(np, [options[-1].last - zero if options else -1 for options in board.openings[at]]),
        end=shift.end - zero,
        most_work=shift.end - zero if shift.max_work is None else min(shift.max_work, shift.end - zero),
        most_cows=NO_LIMIT if shift.max_cows is None else shift.max_cows,
        cow_pace=_cow_pace(board, at, drive),
        meal=-1 if meal is None else meal.length,
        earliest=0 if meal is None else meal.earliest - zero,
        latest=0 if meal is None else meal.latest - zero,
        fed_leave=_fed_leave(shift) - zero,
        fixed=shift.cost_fixed,
        rate=shift.cost_per_hour / 36_000,
    )


def _fed_leave(shift: Shift) -> int:
    if shift.meal is None:
        return shift.start
    home_free = max(shift.meal.earliest, shift.start) + shift.meal.length
    return max(shift.start, min(gone_too_late(shift.meal), home_free))


def _cow_pace(board: Board, at: int, drive: Ints) -> float:
    jobs = board.problem.jobs
    pace = 0.0
    for number, job in enumerate(jobs):
        if board.openings[at][number] and job.cows:
            nearest = min(int(drive[other][number]) for other in range(len(drive)) if other != number)
            pace = max(pace, job.cows / max(job.length + nearest, SHORTEST))
    return pace


def _whole(np: ModuleType, values: list[int]) -> Ints:
    whole: Ints = np.array(values, dtype=np.int64)
    return whole


def _table(np: ModuleType, rows: tuple[tuple[int, ...], ...], stops: list[int]) -> Ints:
    table: Ints = np.array([[rows[a][b] for b in stops] for a in stops], dtype=np.int64)
    return table


def _soonest(np: ModuleType, drive: Ints) -> Ints:
    """Floyd and Warshall: a way round may be quicker than the table's own entry."""
    least: Ints = np.array(drive)
    for via in range(len(least)):
        least = np.minimum(least, least[:, via, None] + least[None, via, :])
    return least
