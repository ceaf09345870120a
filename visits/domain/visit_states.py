"""Why a visit is wanted, and the states it goes through."""

from enum import StrEnum


class VisitReason(StrEnum):
    """Why the farm is to be visited."""

    ROUTINE = "routine"
    URGENT = "urgent"
    RECHECK = "recheck"

    @property
    def label(self) -> str:
        return _REASON_LABELS[self]


class VisitState(StrEnum):
    """How far a visit has come."""

    WANTED = "wanted"
    PLANNED = "planned"
    CONFIRMED = "confirmed"
    UNDER_WAY = "under_way"
    FINISHED = "finished"
    CALLED_OFF = "called_off"

    @property
    def label(self) -> str:
        return _STATE_LABELS[self]

    @property
    def is_open(self) -> bool:
        """Whether work on it is still to come or going on."""
        return self not in (VisitState.FINISHED, VisitState.CALLED_OFF)


_REASON_LABELS = {
    VisitReason.ROUTINE: "Routine",
    VisitReason.URGENT: "Urgent",
    VisitReason.RECHECK: "Re-check",
}
_STATE_LABELS = {
    VisitState.WANTED: "Wanted",
    VisitState.PLANNED: "Planned",
    VisitState.CONFIRMED: "Confirmed",
    VisitState.UNDER_WAY: "Under way",
    VisitState.FINISHED: "Finished",
    VisitState.CALLED_OFF: "Called off",
}

ALLOWED_MOVES: dict[VisitState, frozenset[VisitState]] = {
    VisitState.WANTED: frozenset({VisitState.PLANNED, VisitState.CALLED_OFF}),
    VisitState.PLANNED: frozenset(
        {VisitState.WANTED, VisitState.CONFIRMED, VisitState.UNDER_WAY, VisitState.CALLED_OFF}
    ),
    VisitState.CONFIRMED: frozenset(
        {VisitState.WANTED, VisitState.PLANNED, VisitState.UNDER_WAY, VisitState.CALLED_OFF}
    ),
    VisitState.UNDER_WAY: frozenset({VisitState.FINISHED, VisitState.CALLED_OFF}),
    VisitState.FINISHED: frozenset(),
    VisitState.CALLED_OFF: frozenset(),
}


def may_move(now: VisitState, to: VisitState) -> bool:
    """Whether a visit may go from `now` to `to`.

    A farm that was planned without a word can still be started (confirming is a courtesy, not a gate); a
    visit put off goes back to wanted; finished and called off are the end.
    """
    return to in ALLOWED_MOVES[now]


def moves_from(now: VisitState) -> list[VisitState]:
    """Where a visit may go next, in the order of the states."""
    return [state for state in VisitState if may_move(now, state)]
