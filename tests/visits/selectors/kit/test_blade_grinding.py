from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import TUESDAY_TEN, make_blade, make_farm, make_house, planned, under_way
from tests.visits.worked_blades import cut, long_used, say
from visits.domain.kit.blade_kinds import BladeKind, BladeState, Hand
from visits.selectors.kit.blade_grinding import grinding_ahead

MONDAY_EVENING = TUESDAY_TEN - timedelta(hours=16)
DAY = timedelta(days=1)


def ahead(house, now=MONDAY_EVENING):
    return grinding_ahead(house.scope, house.business, now)


def test_a_dull_knife_is_ground_before_the_day_that_wants_it(house):
    red, blue = long_used(house), long_used(house, "Blue handle", ())
    visit = under_way(house.farm, house.van, TUESDAY_TEN - 7 * DAY)
    say(visit, visit.started_at, in_hand=red)
    cut(house, visit, 10, 20)
    say(visit, visit.started_at + timedelta(minutes=25), in_hand=blue, went_dull=red)
    planned(house.farm, house.van, head_count=20)
    (van,) = ahead(house).vans
    assert van.first_grinding == TUESDAY_TEN.date()
    assert van.to_grind(TUESDAY_TEN.date()) == [red]
    (job,) = van.jobs
    (day,) = job.days
    assert (job.kind, job.hand, job.share, job.is_guess) == (BladeKind.HOOF_KNIFE, Hand.RIGHT, 1, False)
    assert (day.plan.cows, len(day.carry), day.plan.is_held) == (20, 2, True)


def test_the_days_are_those_of_the_visits_that_are_planned_and_not_begun(house):
    long_used(house)
    other = make_farm(house.business, "High Croft", by=house.owner)
    planned(house.farm, house.van, head_count=5)
    planned(other, house.van, TUESDAY_TEN + timedelta(hours=4), head_count=4)
    planned(house.farm, house.van, TUESDAY_TEN + DAY, head_count=6)
    planned(house.farm, house.van, TUESDAY_TEN + 8 * DAY, head_count=6)
    under_way(other, house.van, TUESDAY_TEN + 2 * DAY)
    (van,) = ahead(house).vans
    (job,) = van.jobs
    assert [(day.day, day.plan.cows) for day in job.days] == [
        (TUESDAY_TEN.date(), 9),
        ((TUESDAY_TEN + DAY).date(), 6),
    ]
    assert job.is_guess
    assert (van.first_day, van.first_grinding) == (TUESDAY_TEN.date(), None)


def test_where_all_edges_are_too_few_it_says_how_many_would_do(house):
    long_used(house)
    planned(house.farm, house.van, head_count=60)
    (van,) = ahead(house).vans
    (day,) = van.jobs[0].days
    assert not day.plan.is_held
    assert day.needed >= 3


def test_what_may_not_cut_is_not_planned_with_and_discs_are_not_ground(house):
    long_used(house)
    make_blade(house.van, "Out", state=BladeState.OUT_OF_USE.value)
    make_blade(house.van, "Disc", kind=BladeKind.GRINDER_DISC.value)
    planned(house.farm, house.van)
    grinding = ahead(house)
    (job,) = grinding.vans[0].jobs
    assert [edge.blade.name for edge in job.edges] == ["Red handle"]
    assert grinding.minutes_each == pytest.approx(6)


def test_the_number_of_queries_does_not_grow(house):
    make_house("Other")

    def queries():
        with CaptureQueriesContext(
            connection,
        ) as found:
            ahead(house)
        return len(found)

    long_used(house)
    few = queries()
    for n in range(5):
        long_used(house, f"Knife {n}", (20, 21))
        planned(house.farm, house.van, TUESDAY_TEN + n * DAY)
    assert queries() == few <= 10
