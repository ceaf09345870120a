"""The visits a calendar address shows."""

from datetime import datetime, timedelta

from farms.models import FarmAccess
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from visits.documents.calendar_feed_content import CalendarFeed, CalendarVisit, EventStatus
from visits.domain.visit_states import VisitState
from visits.models import CalendarAddress, Visit

PAST_DAYS, COMING_DAYS = 28, 120
STATUS: dict[VisitState, EventStatus] = {
    VisitState.PLANNED: "TENTATIVE",
    VisitState.CONFIRMED: "CONFIRMED",
    VisitState.UNDER_WAY: "CONFIRMED",
    VisitState.FINISHED: "CONFIRMED",
    VisitState.CALLED_OFF: "CANCELLED",
}


def may_still_be_read(address: CalendarAddress) -> bool:
    """A farm's address lives no longer than its maker's place there; the business closes its own by hand."""
    if address.farm is None:
        return True
    maker = Membership.objects.filter(
        business_id=address.business_id,
        user_id=address.made_by_id,
        joined_at__isnull=False,
        ended_at__isnull=True,
    ).first()
    if maker is None or not address.farm.is_active:
        return False
    accesses = FarmAccess.objects.within(address.scope).filter(membership=maker, farm=address.farm)
    return maker.role != Role.FARM or accesses.exists()


def calendar_content(address: CalendarAddress, now: datetime) -> CalendarFeed:
    """Visits with an hour from four weeks back to four months ahead; called off ones stay, marked cancelled."""
    rows = Visit.objects.within(address.scope).select_related("farm", "van")
    rows = rows.starting_between(now - timedelta(days=PAST_DAYS), now + timedelta(days=COMING_DAYS))
    if address.van_id is not None:
        rows = rows.filter(van_id=address.van_id)
    if address.farm_id is not None:
        rows = rows.filter(farm_id=address.farm_id)
    visits = tuple(_visit(row) for row in rows if row.visit_state in STATUS)
    name = f"{address.business.name}: {address.van or address.farm or 'all vans'}"
    return CalendarFeed(f"calendar-{address.pk}@visits.trimops", name, address.business.timezone, visits)


def _visit(visit: Visit) -> CalendarVisit:
    farm = visit.farm
    start = visit.planned_start or visit.changed_at
    return CalendarVisit(
        uid=f"{visit.uid}@visits.trimops",
        sequence=visit.calendar_sequence,
        last_modified=visit.changed_at,
        start=start,
        end=visit.planned_finish or start + timedelta(minutes=visit.expected_minutes),
        summary=f"{farm.name}: {visit.head_count} cows ({visit.get_reason_display().lower()})",
        status=STATUS[visit.visit_state],
        location=farm.address.replace("\n", ", ") or farm.name,
        description=f"{visit.get_state_display()}. {farm.access_notes}".strip(),
        lat=float(farm.latitude),
        lon=float(farm.longitude),
    )
