"""Rule 1: once out and once back within the shift, no longer at work and with no more cows than allowed."""

from collections.abc import Iterator

from visits.domain.planning.audit.runs import Run
from visits.domain.planning.audit.tolerance import TENTH, mins


def check_span(run: Run) -> Iterator[str]:
    """The breaches of rule 1 in one run, and the drive back to base."""
    shift, away = run.shift, run.back - run.leave
    if run.leave < shift.start - TENTH:
        yield f"{run.path}.leave: is {mins(shift.start - run.leave)} before the shift starts"
    if run.back > shift.end + TENTH:
        yield f"{run.path}.return: is {mins(run.back - shift.end)} after the shift ends"
    if away < 0:
        yield f"{run.path}.return: is {mins(-away)} before leaving"
    if shift.max_work is not None and away > shift.max_work + TENTH:
        yield f"{run.path}.return: {mins(away)} after leaving, more than the {mins(shift.max_work)} allowed"
    if shift.max_cows is not None and run.cows > shift.max_cows:
        yield f"{run.path}.stops: {run.cows} cows, more than the {shift.max_cows} allowed"
    spare = run.back - run.calls[-1].finish
    if spare < run.home.time - TENTH:
        yield (
            f"{run.path}.return: {mins(spare)} after the last finish, the drive back takes {mins(run.home.time)}"
        )
