"""What a farm is to be told of its visit's hour: what it was last told against what is so now."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.clock import local_day
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.visit_states import VisitState

SMALL_MOVE = timedelta(minutes=10)
"""A shorter move within the day is not told: the message of the day before gives a span anyway. Common practice,
no source."""
SAME = timedelta(minutes=1)
SETTLES = timedelta(minutes=2)
"""A plan that moves a visit twice within this tells its farm once. Our own choice."""


@dataclass(frozen=True)
class HourKnown:
    """The hour a farm counts on, aware; None: none, be it that it never knew of one or that it was told it is gone."""

    hour: datetime | None


@dataclass(frozen=True)
class HourNow:
    """The visit as it stands: its state, its hour (aware), the instant, the zone of the business."""

    state: VisitState
    hour: datetime | None
    now: datetime
    zone: ZoneInfo


@dataclass(frozen=True)
class HourNews:
    """`hour` is the visit's, or the one that is gone; `before` the one that the farm counted on, of a visit moved."""

    kind: MessageKind
    hour: datetime
    before: datetime | None = None


def hour_news(known: HourKnown, stands: HourNow) -> HourNews | None:
    """None where the farm knows all there is to know, or it is too late to tell it.

    It depends on nothing but the two, so it does not matter how many changes lie between them.
    """
    if stands.state in (VisitState.PLANNED, VisitState.CONFIRMED):
        return _has_hour(known.hour, stands)
    lost = known.hour
    if lost is None or lost <= stands.now:
        return None
    if stands.state is VisitState.CALLED_OFF:
        return HourNews(MessageKind.CALLED_OFF, lost)
    return HourNews(MessageKind.PUT_OFF, lost) if stands.state is VisitState.WANTED else None


def _has_hour(before: datetime | None, stands: HourNow) -> HourNews | None:
    hour = stands.hour
    if hour is None or hour <= stands.now:
        return None
    if before is None:
        return HourNews(MessageKind.BOOKED, hour)
    same_day = local_day(before, stands.zone) == local_day(hour, stands.zone)
    # because: by the instant, not by the wall, so that a move by the hour of a clock change is one
    if abs(hour.timestamp() - before.timestamp()) < (SMALL_MOVE if same_day else SAME).total_seconds():
        return None
    return HourNews(MessageKind.MOVED, hour, before)
