"""A wanted visit gets its van and its hour."""

from datetime import datetime, timedelta

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.domain.visit_states import VisitState
from visits.models import HeldHour, Van, Visit
from visits.selectors.draft_time import list_minutes
from visits.services.visit_change import begin_change, keep_change


class VanIsBusy(RuleBroken):
    """The van is at another farm then."""

    code = "van_is_busy"


@transaction.atomic
def plan_visit(*, visit: Visit, van: Van, start: datetime, at: datetime, by: User | None) -> Visit:
    """Plan a wanted visit, or move a planned one. VanIsBusy when the van works elsewhere at that time, or that
    hour is held for a farm."""
    require_same_business(visit, van)
    van.locked()
    row = visit.locked()
    if row.visit_state is not VisitState.PLANNED:
        row = begin_change(visit, VisitState.PLANNED)
    row.expected_minutes = list_minutes(row)
    finish = start + timedelta(minutes=row.expected_minutes)
    _refuse_overlap(row, van, start, finish)
    _refuse_held(van, start, finish, at)
    row.van, row.planned_start, row.planned_finish = van, start, finish
    return keep_change(row, VisitState.PLANNED, at=at, by=by, note=f"{van.name}, {start:%Y-%m-%d %H:%M} UTC")


def _refuse_overlap(visit: Visit, van: Van, start: datetime, finish: datetime) -> None:
    others = Visit.objects.within(visit.scope).open().filter(van=van).exclude(pk=visit.pk)
    clash = others.filter(planned_start__lt=finish, planned_finish__gt=start).select_related("farm").first()
    if clash is not None:
        raise VanIsBusy(f"{van.name} is at {clash.farm} then: choose another hour or another van.")


def _refuse_held(van: Van, start: datetime, finish: datetime, at: datetime) -> None:
    rows = HeldHour.objects.within(van.scope).in_force(at).select_related("farm", "business")
    for held in rows.filter(van=van, start__lt=finish):
        if held.finish > start:
            until = held.until.astimezone(held.business.zone)
            raise VanIsBusy(
                f"{van.name} is held for {held.farm} then, until {until:%H:%M}: choose another hour."
            )
