"""A week problem as a few flat arrays, the way compiled functions read it.

Deciseconds count from the start of the earliest shift. Openings of job j in shift s are the rows from
`open_at[s * jobs + j]` up to `open_at[s * jobs + j + 1]`.
"""

from importlib import import_module
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from visits.domain.planning.board import Board
from visits.domain.planning.leave_times import gone_too_late
from visits.domain.planning.problem import Shift
from visits.domain.planning.swift.columns import JOB_COLUMNS, SHIFT_COLUMNS, SHIFT_MONEY

if TYPE_CHECKING:
    from numpy import float64, int64
    from numpy.typing import NDArray

Ints: TypeAlias = "NDArray[int64]"
Floats: TypeAlias = "NDArray[float64]"

NEVER = 2**60
"""Later than any instant of a week."""


class WeekArrays(NamedTuple):
    """All figures of a week. P places, S shifts, J jobs, N openings."""

    times: Ints
    """(P, P) deciseconds."""
    metres: Ints
    """(P, P)."""
    shift: Ints
    """(S, SHIFT_COLUMNS) see `columns`."""
    rate: Floats
    """(S, SHIFT_MONEY) fixed, per decisecond, per metre."""
    job: Ints
    """(J, JOB_COLUMNS)."""
    out: Floats
    """(J,) cost of leaving the job out."""
    near: Ints
    """(J, J) all jobs by closeness to a job, itself first."""
    open_at: Ints
    """(S * J + 1,)."""
    opens: Ints
    """(N, 2) first and last start."""
    open_late: Floats
    """(N,) money."""


def week_arrays(board: Board) -> WeekArrays:
    """The board's week as arrays."""
    np = import_module("numpy")
    problem, zero = board.problem, min((s.start for s in board.problem.shifts), default=0)
    shifts, jobs, places = problem.shifts, problem.jobs, len(problem.travel.times)
    found = [(s, j, o) for s, row in enumerate(board.openings) for j, own in enumerate(row) for o in own]
    counts = np.zeros(len(shifts) * len(jobs) + 1, dtype=np.int64)
    for s, j, _ in found:
        counts[s * len(jobs) + j + 1] += 1
    classes = _classes(board)
    times = np.array(problem.travel.times, dtype=np.int64).reshape(places, places)
    rows = [_shift_row(s, zero, classes[at]) for at, s in enumerate(shifts)]
    rates = [(s.cost_fixed, s.cost_per_hour / 36_000, s.cost_per_km / 1000) for s in shifts]
    own_rows = [(j.place, j.length, j.cows, j.hygiene) for j in jobs]
    return WeekArrays(
        times=times,
        metres=np.array(problem.travel.metres, dtype=np.int64).reshape(places, places),
        shift=np.array(rows, dtype=np.int64).reshape(-1, SHIFT_COLUMNS),
        rate=np.array(rates, dtype=np.float64).reshape(-1, SHIFT_MONEY),
        job=np.array(own_rows, dtype=np.int64).reshape(-1, JOB_COLUMNS),
        out=np.array([board.out_cost(job) for job in range(len(jobs))], dtype=np.float64),
        near=_near(times, [job.place for job in jobs]),
        open_at=np.cumsum(counts),
        opens=np.array([(o.first - zero, o.last - zero) for *_, o in found], dtype=np.int64).reshape(-1, 2),
        open_late=np.array([o.late for *_, o in found], dtype=np.float64),
    )


def _shift_row(s: Shift, zero: int, number: int) -> tuple[int, ...]:
    meal = (-1, 0, 0) if s.meal is None else (s.meal.length, s.meal.earliest - zero, s.meal.latest - zero)
    work = s.end - s.start if s.max_work is None else s.max_work
    cows = NEVER if s.max_cows is None else s.max_cows
    return s.place, s.start - zero, s.end - zero, work, cows, *meal, _fed_leave(s) - zero, number


def _fed_leave(shift: Shift) -> int:
    """The first leaving time that needs no meal on the way."""
    if shift.meal is None:
        return shift.start
    return min(gone_too_late(shift.meal), max(shift.meal.earliest, shift.start) + shift.meal.length)


def _classes(board: Board) -> list[int]:
    """Shifts alike but for their names get one number: an empty one stands for all of them."""
    numbers: dict[object, int] = {}
    found = []
    for at, s in enumerate(board.problem.shifts):
        limits = (s.place, s.start, s.end, s.max_work, s.max_cows, s.meal)
        costs = (s.cost_fixed, s.cost_per_hour, s.cost_per_km)
        found.append(numbers.setdefault((limits, costs, tuple(board.openings[at])), len(numbers)))
    return found


def _near(times: Ints, places: list[int]) -> Ints:
    np = import_module("numpy")
    if not places:
        return np.zeros((0, 0), dtype=np.int64)  # type: ignore[no-any-return]
    between = times[np.ix_(places, places)]
    both = between + between.T
    np.fill_diagonal(both, -1)
    return np.argsort(both, axis=1, kind="stable").astype(np.int64)  # type: ignore[no-any-return]
