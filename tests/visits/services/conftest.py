"""One small business for the services of a visit."""

from datetime import UTC, datetime

import pytest

from tests.factories import MONDAY, House, make_house, under_way
from tests.visits.services.changed_week import ChangedWeek, make_week
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.think_week_plan import think_week_plan

SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def visit(house):
    """A visit that is under way."""
    return under_way(house.farm, house.van)


@pytest.fixture
def proposed(house):
    """Plans the week as asked, thought about with a fixed number of steps."""

    def propose(now: datetime = SUNDAY_EVENING) -> WeekPlan:
        plan = ask_week_plan(business=house.business, monday=MONDAY, at=now, by=house.owner)
        return think_week_plan(week_plan=plan, limits=SolveLimits(iterations=50), at=now)

    return propose


@pytest.fixture
def changed(db) -> ChangedWeek:
    return make_week()
