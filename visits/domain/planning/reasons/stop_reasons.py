"""Why a stop lies on its day and at its place: only what its figures bear out."""

from collections.abc import Callable, Iterator
from math import inf

from visits.domain.planning.board import Board, Week
from visits.domain.planning.measures import kilometres, minutes
from visits.domain.planning.reasons.hygiene_order import hygiene_order
from visits.domain.planning.reasons.on_its_day import due, only_day
from visits.domain.planning.reasons.reason import Figure, Reason
from visits.domain.planning.reasons.standing import PENNY_PART, Standing, moment_of, standings, stop_of


def stop_reasons(board: Board, week: Week) -> Iterator[tuple[int, list[Reason]]]:
    """(job, its reasons, the strongest first) for every stop of the week."""
    for standing in standings(board, week):
        yield standing.job, [reason for find in FINDERS for reason in find(standing)]


def promised(standing: Standing) -> Iterator[Reason]:
    """A promise is kept, whatever else would be cheaper."""
    job = standing.board.problem.jobs[standing.job]
    if job.fixed is not None:
        yield Reason("promised", {"start": moment_of(standing.board, job.fixed.start)})


def at_its_window(standing: Standing) -> Iterator[Reason]:
    """The hour is the first or the last that a window of the farm allows."""
    job, stop = standing.board.problem.jobs[standing.job], standing.stop
    if job.fixed is not None:
        return
    if stop.start > stop.arrive and any(window.start == stop.start for window in job.windows):
        yield Reason("as-it-opens", {"start": moment_of(standing.board, stop.start)})
    if any(window.end == stop.finish for window in job.windows):
        yield Reason("as-it-closes", {"finish": moment_of(standing.board, stop.finish)})


def detour(standing: Standing) -> Iterator[Reason]:
    """The shift with and without the stop: kilometres, drive, free time on the way, money.

    Free is neither driving nor at a visit: waiting or the meal. Fewer free minutes: the visit fills time.
    """
    board, shift = standing.board, standing.shift
    whole = board.timing(shift, standing.order)
    rest = board.timing(shift, standing.rest) if standing.rest else None
    if whole is None or (standing.rest and rest is None):
        return
    drive = sum(board.route(shift, standing.order).legs) - (
        sum(board.route(shift, standing.rest).legs) if rest else 0
    )
    work = whole.back - whole.leave - (rest.back - rest.leave if rest else 0)
    before = board.metres(shift, standing.rest) if rest else 0
    figures: dict[str, Figure] = {
        "km": kilometres(board.metres(shift, standing.order) - before),
        "drive_minutes": minutes(drive),
        "free_minutes": minutes(work - drive - board.problem.jobs[standing.job].length),
        "money": round(standing.saved, 2),
    }
    yield Reason("detour" if standing.rest else "alone", figures)


def next_best(standing: Standing) -> Iterator[Reason]:
    """The cheapest other shift, and the cheapest other place on its own: what each would cost more.

    Nothing where the others of its shift cannot be done without it (a drive past it may be the shorter one).
    """
    board = standing.board
    if board.problem.jobs[standing.job].fixed is not None or standing.saved == -inf:
        return
    for code, spot in (("next-best", standing.elsewhere), ("other-place", standing.beside)):
        if spot is None:
            continue
        other = stop_of(board, spot.shift, spot.order, standing.job)
        figures: dict[str, Figure] = {
            "shift": board.problem.shifts[spot.shift].id,
            "start": moment_of(board, other.start),
            "more": round(spot.extra - standing.saved, 2),
            "days_late": other.days_late,
        }
        yield Reason(code, figures)


def worth_doing(standing: Standing) -> Iterator[Reason]:
    """Leaving out against doing, for a visit that may be left out."""
    job = standing.board.problem.jobs[standing.job]
    if job.leave_out_cost is None or job.fixed is not None:
        return
    if -inf < standing.saved <= job.leave_out_cost + PENNY_PART:
        yield Reason("worth-doing", {"money": round(standing.saved, 2), "leave_out": job.leave_out_cost})


FINDERS: tuple[Callable[[Standing], Iterator[Reason]], ...] = (
    promised,
    due,
    only_day,
    hygiene_order,
    at_its_window,
    next_best,
    detour,
    worth_doing,
)
