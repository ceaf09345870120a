"""Steps of reminding of an overdue invoice."""

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
