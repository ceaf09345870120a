"""A week in the diary with two vans, in the middle of which something happens."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from tests.factories import MONDAY, House, confirmed, make_farm, make_house, make_van, make_wish, planned
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.visit_states import VisitReason
from visits.models import OutBecause, Van, Visit, WeekPlan
from visits.services.note_what_happened import LameWord, OutWord
from visits.services.replan_week import replan_week
from visits.services.tell_hour import tell_hour
from visits.services.think_replan import think_replan

SEVEN = datetime(2026, 3, 3, 7, tzinfo=UTC)
"""Tuesday, before any van has left."""


def at(day, hour, minute=0):
    """Of March 2026."""
    return datetime(2026, 3, day, hour, minute, tzinfo=UTC)


SATURDAY = at(7, 0)


@dataclass
class ChangedWeek:
    """Tuesday: the first van at three farms from nine on, the last of them confirmed; Wednesday: the second at one."""

    house: House
    second: Van
    visits: dict[str, Visit]

    def stored(self, name: str) -> Visit:
        return (
            Visit.objects.within(self.house.scope).select_related("van", "farm").get(pk=self.visits[name].pk)
        )

    def out(self, since=SEVEN, until=SATURDAY, because=OutBecause.CRUSH) -> OutWord:
        return OutWord(self.house.van, because, since, until)

    def lame(self, **changes) -> LameWord:
        days = {"due_from": MONDAY, "due_until": MONDAY + timedelta(days=2), "head_count": 1}
        return LameWord(self.house.farm, make_wish(reason=VisitReason.URGENT, **{**days, **changes}))

    def planned_again(self, happening, now=SEVEN) -> WeekPlan:
        plan = self.asked(happening, now)
        think_replan(week_plan=plan, limits=SolveLimits(iterations=50), at=now)
        return WeekPlan.objects.within(self.house.scope).get(pk=plan.pk)

    def asked(self, happening, now=SEVEN) -> WeekPlan:
        plan = replan_week(
            business=self.house.business, monday=MONDAY, happening=happening, at=now, by=self.house.owner
        )
        assert plan is not None
        return plan

    def stop(self, plan, name):
        """(shift, start) of the visit in a plan, or None."""
        for shift in plan.plan["shifts"]:
            for stop in shift["stops"]:
                if stop["job"] == f"visit-{self.visits[name].pk}":
                    return shift["id"], datetime.fromisoformat(stop["start"])
        return None


def make_week() -> ChangedWeek:
    house = make_house()
    second = make_van(house.business, house.owner, "Van 2")

    def farm(name, north):
        return make_farm(house.business, name, by=house.owner, latitude=north, phone="01539 000111")

    visits = {
        "first": planned(farm("First", "54.05"), house.van, at(3, 9), head_count=5),
        "told": planned(farm("Told", "54.10"), house.van, at(3, 11), head_count=5),
        "firm": confirmed(farm("Firm", "54.15"), house.van, at(3, 13), head_count=5),
        "other": planned(farm("Other", "54.20"), second, at(4, 10), head_count=5),
    }
    tell_hour(visit=visits["told"], at=at(2, 12), by=house.office)
    return ChangedWeek(house, second, visits)
