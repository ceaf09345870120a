"""A visit as calendars show it, made of the values that the database wrote as text."""

from datetime import date, datetime, timedelta
from typing import NamedTuple
from zoneinfo import ZoneInfo

from trimops.kernel.clock import from_to
from trimops.paper.figures import counted
from visits.documents.calendar_feed_content import CalendarVisit, EventStatus
from visits.domain.visit_states import VisitReason, VisitState
from visits.selectors.calendar_rows import instant, newest

STATUS: dict[VisitState, EventStatus] = {
    VisitState.WANTED: "TENTATIVE",
    VisitState.PLANNED: "TENTATIVE",
    VisitState.CONFIRMED: "CONFIRMED",
    VisitState.UNDER_WAY: "CONFIRMED",
    VisitState.FINISHED: "CONFIRMED",
    VisitState.CALLED_OFF: "CANCELLED",
}
TO_COME = (VisitState.PLANNED, VisitState.CONFIRMED)


class VisitRow(NamedTuple):
    """The columns of `calendar_rows.VISIT`, in their order; instants and days as the database wrote them."""

    uid: str
    state: str
    reason: str
    head_count: int
    expected_minutes: int
    sequence: int
    changed_at: str
    planned_start: str | None
    planned_finish: str | None
    last_start: str | None
    last_finish: str | None
    due_until: str
    van: str | None
    trimmer: str | None
    van_since: str | None
    farm: str
    address: str
    access: str
    latitude: float
    longitude: float
    farm_sequence: int
    farm_since: str | None


def visit_event(row: VisitRow, zone: ZoneInfo, *, shows_wishes: bool) -> CalendarVisit:
    """At its hour; without one on its last day where wishes are shown, else called off at the hour that it had."""
    state = VisitState(row.state)
    is_wish = state is VisitState.WANTED and shows_wishes
    lost_hour = row.planned_start is None and not is_wish
    start, end = _last_day(row, zone) if is_wish else _hour(row)
    return CalendarVisit(
        uid=event_uid(row.uid),
        sequence=row.sequence + row.farm_sequence,
        last_modified=newest(row.changed_at, row.farm_since, row.van_since),
        start=start,
        end=end,
        summary=_summary(row, state, lost_hour, is_wish),
        status="CANCELLED" if lost_hour else STATUS[state],
        location=row.address.replace("\n", ", ") or row.farm,
        description=_description(row, state),
        lat=row.latitude,
        lon=row.longitude,
        all_day=is_wish,
        rings=state in TO_COME,
    )


def event_uid(uid: object) -> str:
    """The one uid of a visit, in every feed and invitation: never changed, never used again."""
    text = str(uid).replace("-", "")
    return f"{text[:8]}-{text[8:12]}-{text[12:16]}-{text[16:20]}-{text[20:]}@visits.trimops"


def _hour(row: VisitRow) -> tuple[datetime, datetime]:
    """Its hour, or the one that it had."""
    start_text, end_text = row.planned_start, row.planned_finish
    if start_text is None:
        start_text, end_text = row.last_start, row.last_finish
    start = instant(start_text or row.changed_at)
    return start, instant(end_text) if end_text else start + timedelta(minutes=row.expected_minutes)


def _last_day(row: VisitRow, zone: ZoneInfo) -> tuple[datetime, datetime]:
    day = date.fromisoformat(row.due_until)
    return from_to(day, day, zone)


def _summary(row: VisitRow, state: VisitState, lost_hour: bool, is_wish: bool) -> str:
    what = f"{row.farm}: {counted(row.head_count, 'cow')} ({VisitReason(row.reason).label.lower()})"
    if state is VisitState.CALLED_OFF:
        return f"Called off: {what}"
    if is_wish:
        return f"No hour yet, last day: {what}"
    return f"Put off: {what}" if lost_hour else what


def _description(row: VisitRow, state: VisitState) -> str:
    who = f" {row.van}, {row.trimmer}." if row.van else ""
    return f"{state.label}.{who} {row.access}".strip()
