"""Two plans of one week beside each other: what becomes of each visit, and what the weeks come to."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from visits.domain.planning.replan.broken_promises import Document, parts
from visits.domain.planning.replan.plan_in_force import InForce
from visits.domain.planning.replan.price_of_change import PriceOfChange, price_paid

SAME_HOUR = timedelta(minutes=1)
"""Starts nearer than this are the same hour."""


class Change(StrEnum):
    """What becomes of a visit. Another day outranks another van, and that another hour."""

    NEW_DAY = "new_day"
    NEW_VAN = "new_van"
    NEW_HOUR = "new_hour"
    LEFT_OUT = "left_out"
    PUT_IN = "put_in"
    GONE = "gone"
    STAYS = "stays"

    @property
    def label(self) -> str:
        return _LABELS[self]

    def counted(self, number: int) -> str:
        """So many visits, in a heading: "2 to another day"."""
        return f"{number} {_COUNTED[self]}"


_LABELS = {
    Change.NEW_DAY: "New day",
    Change.NEW_VAN: "New van",
    Change.NEW_HOUR: "New hour",
    Change.LEFT_OUT: "Left out",
    Change.PUT_IN: "Put in",
    Change.GONE: "No longer to plan",
    Change.STAYS: "Stays",
}
_COUNTED = {
    Change.NEW_DAY: "to another day",
    Change.NEW_VAN: "to another van",
    Change.NEW_HOUR: "at another hour",
    Change.LEFT_OUT: "left out",
    Change.PUT_IN: "put in",
    Change.GONE: "no longer to plan",
    Change.STAYS: "as before",
}


@dataclass(frozen=True)
class StoredPlan:
    """A problem document and a plan document of it."""

    problem: Document
    plan: Document


@dataclass(frozen=True)
class Slot:
    """Where a plan has a visit: shift and crew by id, aware instants in the zone of the week."""

    shift: str
    crew: str
    start: datetime
    finish: datetime


@dataclass(frozen=True)
class VisitChange:
    """One job of either plan. `before` and `after` are None where that plan does not do it."""

    job: str
    change: Change
    before: Slot | None
    after: Slot | None

    @property
    def later(self) -> timedelta | None:
        """How much later it starts; None unless both plans do it."""
        return self.after.start - self.before.start if self.before and self.after else None


@dataclass(frozen=True)
class WeekSums:
    """What a plan comes to: kilometres, hours at work, money of the minor unit, visits done."""

    km: float
    hours: float
    money: float
    visits: int


@dataclass(frozen=True)
class Comparison:
    """`visits` with the changed ones first, each kind in order of time; `paid` is the price of the changes.

    `same_list` says whether both were made for the same visits: only then are the sums to be weighed up.
    """

    visits: tuple[VisitChange, ...]
    before: WeekSums
    after: WeekSums
    paid: float
    same_list: bool

    @property
    def changed(self) -> list[VisitChange]:
        """Those that do not stay as they are."""
        return [visit for visit in self.visits if visit.change is not Change.STAYS]


def compare_plans(
    before: StoredPlan,
    after: StoredPlan,
    in_force: Sequence[InForce] = (),
    price: PriceOfChange | None = None,
) -> Comparison:
    """From `before` to `after`. Without a `price` nothing is paid. Jobs that neither plan does are not listed."""
    old, new = _slots(before), _slots(after)
    wanted = _job_ids(after.problem)
    rows = [_row(job, old.get(job), new.get(job), wanted) for job in {**old, **new}]
    placed = {job: (slot.shift, slot.start) for job, slot in new.items()}
    still = [entry for entry in in_force if entry.job in wanted]
    return Comparison(
        visits=tuple(sorted(rows, key=_rank)),
        before=_sums(before.plan),
        after=_sums(after.plan),
        paid=price_paid(still, placed, price) if price else 0.0,
        same_list=_job_ids(before.problem) == wanted,
    )


def _row(job: str, old: Slot | None, new: Slot | None, wanted: set[str]) -> VisitChange:
    if old is None or new is None:
        lost = Change.LEFT_OUT if job in wanted else Change.GONE
        return VisitChange(job, Change.PUT_IN if old is None else lost, old, new)
    if old.start.date() != new.start.date():
        return VisitChange(job, Change.NEW_DAY, old, new)
    if old.crew != new.crew:
        return VisitChange(job, Change.NEW_VAN, old, new)
    same = abs(old.start - new.start) < SAME_HOUR
    return VisitChange(job, Change.STAYS if same else Change.NEW_HOUR, old, new)


def _rank(row: VisitChange) -> tuple[int, datetime, str]:
    slot = row.after or row.before
    if slot is None:
        raise AssertionError("a row has a slot before or after")
    return list(Change).index(row.change), slot.start, row.job


def _slots(stored: StoredPlan) -> dict[str, Slot]:
    zone = ZoneInfo(str(stored.problem["timezone"]))
    crews = {str(shift["id"]): str(shift["crew"]) for shift in parts(stored.problem, "shifts")}
    return dict(_stops(stored.plan, crews, zone))


def _stops(plan: Document, crews: Mapping[str, str], zone: ZoneInfo) -> Iterator[tuple[str, Slot]]:
    for shift in parts(plan, "shifts"):
        name = str(shift["id"])
        for stop in parts(shift, "stops"):
            start, finish = (
                datetime.fromisoformat(str(stop[key])).astimezone(zone) for key in ("start", "finish")
            )
            yield str(stop["job"]), Slot(name, crews.get(name, name), start, finish)


def _job_ids(problem: Document) -> set[str]:
    return {str(job["id"]) for job in parts(problem, "jobs")}


def _sums(plan: Document) -> WeekSums:
    shifts, cost = parts(plan, "shifts"), plan.get("cost")
    return WeekSums(
        km=sum(float(str(shift["km"])) for shift in shifts),
        hours=sum(float(str(shift["work_minutes"])) for shift in shifts) / 60,
        money=float(str(cost["total"])) if isinstance(cost, dict) else 0.0,
        visits=sum(len(parts(shift, "stops")) for shift in shifts),
    )
