"""Days of the week that the plan shown does not have (any more), as the diary has them: mostly those gone by."""

from collections.abc import Collection, Sequence
from datetime import date, datetime, timedelta

from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.selectors.plan_rows import PlanRows, ShiftView, StopView


def diary_shifts(scope: Scope, monday: date, rows: PlanRows, planned: Collection[str]) -> list[ShiftView]:
    """A van's day for each that has visits with an hour in this week and is not among `planned` (ids of shifts).

    Drives are not known of it, so leaving is the first start and coming home the last finish. One query.
    """
    days: dict[str, list[Visit]] = {}
    for visit in _with_hour(scope, monday, rows):
        start = visit.planned_start
        if start is not None and visit.van_id in rows.vans:
            shift = f"van-{visit.van_id}-{start.astimezone(rows.zone).date()}"
            days.setdefault(shift, []).append(visit)
    return [_view(shift, visits, rows) for shift, visits in days.items() if shift not in planned]


def _with_hour(scope: Scope, monday: date, rows: PlanRows) -> list[Visit]:
    first = datetime(monday.year, monday.month, monday.day, tzinfo=rows.zone)
    found = Visit.objects.within(scope).starting_between(first, first + timedelta(days=7))
    found = found.exclude(state=VisitState.CALLED_OFF).filter(planned_finish__isnull=False)
    return list(found.select_related("farm").order_by("planned_start", "id"))


def _view(shift: str, visits: Sequence[Visit], rows: PlanRows) -> ShiftView:
    stops = [_stop(visit, rows) for visit in visits]
    first, last = stops[0].start, max(stop.finish for stop in stops)
    return ShiftView(
        id=shift,
        van=rows.vans[visits[0].van_id or 0],
        day=first.date(),
        begins=first,
        ends=last,
        leave=first,
        back=last,
        cows=sum(visit.head_count for visit in visits),
        stops=stops,
        has_begun=first <= rows.begun_by,
        is_diary=True,
    )


def _stop(visit: Visit, rows: PlanRows) -> StopView:
    start, finish = (
        (at or rows.begun_by).astimezone(rows.zone) for at in (visit.planned_start, visit.planned_finish)
    )
    return StopView(visit, start, finish, "", (), 0, 0.0)
