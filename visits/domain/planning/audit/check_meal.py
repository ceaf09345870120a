"""Rule 6: a shift away from base at meal time keeps a gap in which nobody drives or works."""

from collections.abc import Iterator

from visits.domain.planning.audit.plan import ToldMeal
from visits.domain.planning.audit.runs import Run
from visits.domain.planning.audit.tolerance import TENTH, mins, same_time
from visits.domain.planning.audit.week import MealRule


def check_meal(run: Run) -> Iterator[str]:
    """The breaches of rule 6 in one run, and a printed meal that is no such gap."""
    rule, told = run.shift.meal, run.meal
    if rule is None:
        if told is not None:
            yield f"{run.path}.meal: this shift has no meal to keep"
        return
    if told is not None:
        wrong = list(_told(run, rule, told))
        yield from wrong
        if not wrong:
            return  # a printed meal that is such a gap is the proof that there is one
    if _is_needed(run, rule):
        if not any(_is_free(run, start, rule.length) for start in _beginnings(run, rule)):
            yield f"{run.path}.stops: leave no gap of {mins(rule.length)} for the meal"
        elif told is None:
            yield f"{run.path}.meal: is not printed, though the shift is away at meal time"


def keeps_meal(run: Run) -> bool:
    """Whether rule 6 holds for the run, whatever is printed."""
    rule = run.shift.meal
    if rule is None or not _is_needed(run, rule):
        return True
    return any(_is_free(run, start, rule.length) for start in _beginnings(run, rule))


def _is_needed(run: Run, rule: MealRule) -> bool:
    """Away over any part: an away time that only touches the meal time by a tenth of a second is no part of it.

    A meal of no length needs no gap.
    """
    gone = run.leave + TENTH < max(rule.latest, rule.earliest + 2 * TENTH)
    return gone and run.back - TENTH > rule.earliest and rule.length > TENTH


def _beginnings(run: Run, rule: MealRule) -> list[int]:
    """If any gap will do, one that begins at the earliest instant or as a drive or a job ends will."""
    ends = [end for start, end in run.busy() if start < end]
    return [
        at for at in (rule.earliest, run.shift.start, *ends) if rule.earliest <= at <= rule.latest + TENTH
    ]


def _is_free(run: Run, start: int, length: int) -> bool:
    """Nobody drives or works from `start` for `length`, within the shift (the shift contains its gap)."""
    end = start + length
    if start < run.shift.start - TENTH or end > run.shift.end + TENTH:
        return False
    return all(min(end, done) - max(start, begun) <= TENTH for begun, done in run.busy())


def _told(run: Run, rule: MealRule, told: ToldMeal) -> Iterator[str]:
    if not same_time(told.end - told.start, rule.length):
        yield f"{told.path}.end: the meal lasts {mins(told.end - told.start)}, not {mins(rule.length)}"
    if told.start < rule.earliest - TENTH:
        yield f"{told.path}.start: is {mins(rule.earliest - told.start)} before the earliest"
    if told.start > rule.latest + TENTH:
        yield f"{told.path}.start: is {mins(told.start - rule.latest)} after the latest"
    if not _is_free(run, told.start, told.end - told.start):
        yield f"{told.path}: somebody drives or works during it, or it lies outside the shift"
