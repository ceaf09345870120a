"""A proposed week of two vans and four farms, to move stops in by hand."""

from dataclasses import dataclass
from datetime import datetime

from tests.factories import House, make_farm, make_house, make_van, wanted
from tests.visits.services.conftest import SUNDAY_EVENING
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import Visit, WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.think_week_plan import think_week_plan

NAMES = ("High Croft", "Ash Hollow", "Thistle Bank")


@dataclass(frozen=True)
class HandWeek:
    house: House
    visits: list[Visit]
    plan: WeekPlan

    def spot(self, visit: Visit, plan: WeekPlan | None = None) -> tuple[str, int] | None:
        """(shift, position) of the visit in the plan."""
        for shift in (plan or self.plan).plan["shifts"]:
            for position, stop in enumerate(shift["stops"]):
                if stop["job"] == f"visit-{visit.pk}":
                    return shift["id"], position
        return None

    def other_shift(self, visit: Visit) -> str:
        """A shift of another day than the visit's."""
        here = self.spot(visit)
        day = here[0][-10:] if here else ""
        return next(shift["id"] for shift in self.plan.problem["shifts"] if not shift["id"].endswith(day))


def hand_week(at: datetime = SUNDAY_EVENING, **wish: object) -> HandWeek:
    """Planned as of `at`, with a fixed number of steps."""
    house = make_house()
    make_van(house.business, house.trimmer, "Van 2")
    farms = [house.farm]
    farms += [
        make_farm(house.business, name, by=house.owner, latitude=54 + at / 20)
        for at, name in enumerate(NAMES)
    ]
    visits = [wanted(farm, **wish) for farm in farms]
    plan = ask_week_plan(business=house.business, monday=visits[0].due_from, at=at, by=house.owner)
    plan = think_week_plan(week_plan=plan, limits=SolveLimits(iterations=20), at=at)
    assert plan.state == "proposed"
    return HandWeek(house, visits, plan)
