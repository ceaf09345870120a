"""A stored plan of a week, laid out for its page: the whole week at one look, and one day of it near by."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from decimal import Decimal

from farms.selectors.farm_windows import milkings_by_farm
from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import HeldHour, PlanLock, Van, Visit, WeekPlan
from visits.selectors.diary_rows import diary_shifts
from visits.selectors.plan_holds import LOCKABLE, stops_of, visit_key
from visits.selectors.plan_rows import PlanRows, ShiftView, axis_of, shift_views
from visits.selectors.public_holidays import holidays_between
from visits.selectors.week_board import Board, board_of_rows
from visits.selectors.week_days import ChosenDay, DayView, chosen_day, days_of

Parts = list[dict[str, object]]


@dataclass(frozen=True)
class LeftOut:
    """A visit that the plan leaves out, why, and whether by a person's will."""

    visit: Visit
    reason: str
    detail: str
    by_hand: bool


@dataclass(frozen=True)
class WeekView:
    """The days of a plan, the board of all of them, the day chosen, the visits left out, and the sums of the plan.

    Days that the plan does not have stand as the diary has them. `placed` are all visits with a place on the board.
    """

    days: Sequence[DayView]
    board: Board
    chosen: ChosenDay | None
    left_out: Sequence[LeftOut]
    money: Decimal
    late: Decimal
    placed: frozenset[int] = field(default_factory=frozenset)

    @property
    def planned(self) -> list[ShiftView]:
        """The days of vans that are the plan's own."""
        return [shift for day in self.days for shift in day.shifts if not shift.is_diary]

    @property
    def visits(self) -> int:
        return sum(len(shift.stops) for shift in self.planned)

    @property
    def cows(self) -> int:
        return sum(shift.cows for shift in self.planned)

    @property
    def km(self) -> float:
        return sum(shift.km for shift in self.planned)

    @property
    def work_minutes(self) -> int:
        return sum(shift.work_minutes for shift in self.planned)


def week_view(business: Business, week_plan: WeekPlan, now: datetime, chosen: date | None = None) -> WeekView:
    """The plan laid out; a visit or van that is gone since is passed over. A fixed number of queries.

    `chosen` is the day looked at; without it (or outside the week) today, else the first day that a van goes out.
    """
    plan: dict[str, Parts] = week_plan.plan or {"shifts": [], "left_out": []}
    rows = _rows(business, plan, now)
    planned = shift_views(week_plan.problem, plan, rows)
    diary = diary_shifts(Scope(business.pk), week_plan.monday, rows, {shift.id for shift in planned})
    shifts = sorted([*planned, *diary], key=lambda shift: (shift.day, shift.id))
    sunday = week_plan.monday + timedelta(days=6)
    days = days_of(shifts, holidays_between(business, week_plan.monday, sunday))
    cost: Mapping[str, object] = plan.get("cost") or {}  # type: ignore[assignment]
    return WeekView(
        days,
        board_of_rows(shifts, axis_of(shifts)),
        chosen_day(days, (chosen, local_day(now, business.zone))),
        _left_out(plan["left_out"], week_plan, rows),
        _money(cost.get("shifts")),
        _money(cost.get("lateness")),
        frozenset(stop.visit.pk for shift in shifts for stop in shift.stops),
    )


def shifts_of_plan(business: Business, week_plan: WeekPlan, now: datetime) -> list[ShiftView]:
    """Each van's day of the plan alone."""
    plan: dict[str, Parts] = week_plan.plan or {"shifts": [], "left_out": []}
    return shift_views(week_plan.problem, plan, _rows(business, plan, now))


def _rows(business: Business, plan: Mapping[str, Parts], now: datetime) -> PlanRows:
    scope = Scope(business.pk)
    keys = [visit_key(stop["job"]) for _, stop in stops_of(plan)]
    keys += [visit_key(item["job"]) for item in plan["left_out"]]
    locks = PlanLock.objects.within(scope).filter(visit__in=keys)
    visits = Visit.objects.within(scope).select_related("farm").exclude(state=VisitState.CALLED_OFF)
    held = [str(stop["job"]) for _, stop in stops_of(plan) if not visit_key(stop["job"])]
    hours = HeldHour.objects.within(scope).in_force(now).select_related("farm")
    return PlanRows(
        business.zone,
        Van.objects.within(scope).select_related("business").in_bulk(),
        visits.in_bulk(keys),
        milkings_by_farm(scope),
        {lock.visit_id: lock for lock in locks},
        {hour.job: hour for hour in hours} if held else {},
        now,
    )


def _left_out(entries: Parts, week_plan: WeekPlan, rows: PlanRows) -> list[LeftOut]:
    found = [(rows.visits.get(visit_key(item["job"])), item) for item in entries]
    return [
        LeftOut(visit, str(item["reason"]), str(item["detail"]), str(item["job"]) in week_plan.left_by_hand)
        for visit, item in found
        if visit is not None and visit.visit_state in LOCKABLE
    ]


def _money(minor: object) -> Decimal:
    return Decimal(str(minor or 0)).quantize(Decimal(1)) / 100
