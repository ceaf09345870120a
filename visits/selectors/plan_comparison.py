"""Two plans of a week beside each other, ready for a page: what becomes of each visit, and what to tell its farm."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from farms.models import Contact
from trimops.accounts.models import Business
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope
from visits.domain.planning.compare_plans import (
    Change,
    Comparison,
    Slot,
    StoredPlan,
    VisitChange,
    compare_plans,
)
from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.planning.replan.price_of_change import PriceOfChange
from visits.domain.planning.replan.stored_change import StoredChange, read_change
from visits.models import Van, Visit, WeekPlan
from visits.selectors.farm_message import DraftMessage, draft_message
from visits.selectors.messages.told_lines import ToldLine, told_lines
from visits.selectors.plan_holds import visit_key


@dataclass(frozen=True)
class Hour:
    """Where a plan has a visit, in words for a page."""

    start: datetime
    finish: datetime
    van: str


@dataclass(frozen=True)
class ComparedVisit:
    """One visit of either plan. `asks` says that it is confirmed and moves only with a yes; `message` what to tell.

    `told_lines` are the people who were told it by themselves.
    """

    visit: Visit
    change: Change
    before: Hour | None
    after: Hour | None
    promise: Promise | None
    told: datetime | None
    asks: bool
    is_fact: bool
    message: DraftMessage | None
    told_lines: Sequence[ToldLine] = ()

    @property
    def gone_word(self) -> str:
        """What has become of a visit that is no longer to plan."""
        state = self.visit.visit_state
        return "No longer to plan" if state.is_open and not self.visit.started_at else state.label


@dataclass(frozen=True)
class Sum:
    """One figure of both weeks; the difference is what the second has more."""

    before: Decimal
    after: Decimal

    @property
    def more(self) -> Decimal:
        return self.after - self.before


@dataclass(frozen=True)
class PlanComparison:
    """`kinds` say how many change in which way; money in whole units of the business."""

    changed: Sequence[ComparedVisit]
    stays: Sequence[ComparedVisit]
    kinds: Sequence[str]
    km: Sum
    hours: Sum
    money: Sum
    visits: Sum
    paid: Decimal
    same_list: bool

    @property
    def asks(self) -> list[ComparedVisit]:
        """Confirmed visits that cannot be kept."""
        return [row for row in self.changed if row.asks]

    @property
    def messages(self) -> list[ComparedVisit]:
        """Those whose farms have something to be told, those that count on an hour first."""
        rows = [row for row in [*self.changed, *self.stays] if row.message]
        return sorted(rows, key=lambda row: row.told is None)


def plan_against(business: Business, after: WeekPlan, before: WeekPlan) -> PlanComparison:
    """From one stored plan of a week to another, whatever their states. A fixed number of queries."""
    old = StoredPlan(before.problem, before.plan or {})
    compared = compare_plans(old, StoredPlan(after.problem, after.plan or {}))
    return _Rows(business, compared, None).comparison()


def change_of_plan(business: Business, week_plan: WeekPlan) -> PlanComparison | None:
    """From the diary as it was to the plan made anew; None where the plan was not. A fixed number of queries."""
    if week_plan.change is None:
        return None
    change = read_change(week_plan.change)
    compared = change.compared(StoredPlan(week_plan.problem, week_plan.plan or {}))
    return _Rows(business, compared, change).comparison()


def price_words(week_plan: WeekPlan) -> PriceOfChange | None:
    """The price of change that the plan was made with."""
    return read_change(week_plan.change).price if week_plan.change else None


class _Rows:
    """A comparison with the rows that its keys stand for."""

    def __init__(self, business: Business, compared: Comparison, change: StoredChange | None) -> None:
        scope = Scope(business.pk)
        self.business, self.compared, self.change = business, compared, change
        keys = [visit_key(row.job) for row in compared.visits]
        self.visits = Visit.objects.within(scope).select_related("farm").in_bulk(keys)
        self.vans = {f"van-{van.pk}": van.name for van in Van.objects.within(scope)}
        self.promises: Mapping[str, InForce] = {e.job: e for e in change.in_force} if change else {}
        farms = {visit.farm_id for visit in self.visits.values()}
        self.told = told_lines(scope, self.visits.values())
        self.contacts = list(Contact.objects.within(scope).filter(farm__in=farms).order_by("id"))

    def comparison(self) -> PlanComparison:
        rows = list(self._rows())
        before, after = self.compared.before, self.compared.after
        counts = Counter(row.change for row in rows)
        return PlanComparison(
            changed=[row for row in rows if row.change is not Change.STAYS],
            stays=[row for row in rows if row.change is Change.STAYS],
            kinds=[
                kind.counted(counts[kind]) for kind in Change if kind is not Change.STAYS and counts[kind]
            ],
            km=Sum(_figure(before.km, 0), _figure(after.km, 0)),
            hours=Sum(_figure(before.hours, 1), _figure(after.hours, 1)),
            money=Sum(minor(before.money), minor(after.money)),
            visits=Sum(Decimal(before.visits), Decimal(after.visits)),
            paid=minor(self.compared.paid),
            same_list=self.compared.same_list,
        )

    def _rows(self) -> Iterator[ComparedVisit]:
        """A visit that is gone since is passed over."""
        for row in self.compared.visits:
            visit = self.visits.get(visit_key(row.job))
            if visit is not None:
                yield self._row(row, visit)

    def _row(self, row: VisitChange, visit: Visit) -> ComparedVisit:
        entry, change = self.promises.get(row.job), self.change
        told = entry.known_hour if entry else None
        hour = row.after.start if row.after else None
        return ComparedVisit(
            visit=visit,
            change=row.change,
            before=self._hour(row.before),
            after=self._hour(row.after),
            promise=entry.promise if entry else None,
            told=told,
            asks=bool(change and row.job in change.asks and row.change is not Change.STAYS),
            is_fact=bool(change and row.job in change.facts),
            message=draft_message(self.business, visit, self.contacts, (row, told, change))
            if change
            else None,
            told_lines=[line for line in self.told.get(visit.pk, ()) if line.is_about(hour)],
        )

    def _hour(self, slot: Slot | None) -> Hour | None:
        return Hour(slot.start, slot.finish, self.vans.get(slot.crew, slot.crew)) if slot else None


def minor(units: float) -> Decimal:
    """Minor units of money as whole ones."""
    return round_money(Decimal(str(units)) / 100)


def _figure(value: float, places: int) -> Decimal:
    return Decimal(f"{value:.{places}f}")
