"""Steps of reminding of an overdue invoice: one after the other, each once, and with the time between that was set."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class ReminderState(StrEnum):
    """Where a reminder stands."""

    PROPOSED = "proposed"
    APPROVED = "approved"
    DROPPED = "dropped"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    ReminderState.PROPOSED: "To be looked at",
    ReminderState.APPROVED: "Approved",
    ReminderState.DROPPED: "Dropped",
}


@dataclass(frozen=True)
class PastStep:
    """A step that was proposed, and the day on which somebody decided on it (None: nobody has)."""

    step: int
    decided_on: date | None


def due_step(due_on: date, today: date, days: Sequence[int], past: Sequence[PastStep]) -> int | None:
    """The step to propose for an invoice that is not paid; None: none yet, or one waits to be decided on.

    `days` are those after the due day, for each step. The first letter is never skipped, and the next one keeps the
    time that `days` puts between them, also where the one before went out late.
    """
    if any(step.decided_on is None for step in past):
        return None
    last = max(past, key=lambda step: step.step, default=None)
    step = last.step + 1 if last else 1
    if step > len(days) or (today - due_on).days < days[step - 1]:
        return None
    if last and last.decided_on and (today - last.decided_on).days < days[step - 1] - days[step - 2]:
        return None
    return step


def read_days(kept: object) -> tuple[int, ...]:
    """The days of the steps as they are kept, in order; what is no list of whole numbers counts as none."""
    if not isinstance(kept, list):
        return ()
    return tuple(sorted({day for day in kept if isinstance(day, int) and day > 0}))


def step_words(step: int, days: Sequence[int]) -> str:
    """First reminder, second reminder, last reminder."""
    if step >= len(days) > 1:
        return "Last reminder"
    return {1: "First reminder", 2: "Second reminder", 3: "Third reminder"}.get(step, f"Reminder {step}")
