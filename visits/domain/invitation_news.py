"""What an invited address is to be sent: what it was last told of a visit against what is so now (RFC 5546)."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from visits.domain.visit_states import VisitState


class InvitationMethod(StrEnum):
    """The methods of iTIP that we send."""

    REQUEST = "REQUEST"
    CANCEL = "CANCEL"


@dataclass(frozen=True)
class InvitedHour:
    """An hour as it was told; instants aware. `is_off`: it was taken back since."""

    start: datetime
    finish: datetime
    is_confirmed: bool
    is_off: bool = False


@dataclass(frozen=True)
class VisitNow:
    """The visit as it stands, and the instant."""

    state: VisitState
    start: datetime | None
    finish: datetime | None
    now: datetime


def invitation_news(told: InvitedHour | None, stands: VisitNow) -> InvitationMethod | None:
    """A first invitation, and one after a taking back, wait until the visit is confirmed; a move of an hour that was
    told does not wait. None where all is known, and where it is too late: begun, or the hour has passed.
    """
    live = told if told and not told.is_off else None
    if stands.state in (VisitState.WANTED, VisitState.CALLED_OFF):
        return InvitationMethod.CANCEL if live and live.start > stands.now else None
    if stands.state not in (VisitState.PLANNED, VisitState.CONFIRMED):
        return None
    if stands.start is None or stands.finish is None or stands.start <= stands.now:
        return None
    is_confirmed = stands.state is VisitState.CONFIRMED
    if live is None:
        return InvitationMethod.REQUEST if is_confirmed else None
    is_known = live == InvitedHour(stands.start, stands.finish, is_confirmed)
    return None if is_known else InvitationMethod.REQUEST
