"""The diary of a week as the finding of room sees it."""

from datetime import timedelta

import pytest

from tests.factories import MONDAY, confirmed, make_farm, planned, wanted
from tests.visits.services.offers import SUNDAY_EVENING, TUESDAY, at, hold, offers, urgent
from visits.models import Visit
from visits.selectors.offer_again import AskedPlace, offer_again
from visits.selectors.offer_week import Spot, freed_jobs, offer_week
from visits.services.hold_offer import asked_for
from visits.services.start_visit import start_visit


@pytest.fixture
def croft(house):
    return make_farm(house.business, "High Croft", by=house.owner)


def week_of(house, wish=None, **more):
    return offer_week(asked_for(house.farm, wish or urgent()), MONDAY, SUNDAY_EVENING, **more)


def test_planned_and_confirmed_visits_stand_in_the_order_of_their_hours(house, croft):
    late = planned(croft, house.van, at("13:00"), head_count=2)
    early = confirmed(house.farm, house.van, at("09:30"), head_count=2)
    wanted(croft)
    week = week_of(house)
    assert [len(order) for order in week.standing.week] == [0, 2, 0, 0, 0]
    order = week.standing.week[1]
    assert [week.stops[job].visit for job in order] == [early, late]
    jobs = week.standing.board.problem.jobs
    assert [jobs[job].fixed is not None for job in order] == [True, False]
    assert week.spot_of(order[0]) == Spot(house.van.pk, TUESDAY)
    assert (week.job_of(late.pk), week.job_of(987_654_321)) == (order[1], None)


def test_a_visit_outside_its_farms_hours_stays_where_a_person_put_it(house, croft):
    odd = planned(croft, house.van, at("15:15"), head_count=1)
    week = week_of(house)
    assert week.standing.board.problem.jobs[week.job_of(odd.pk)].fixed is not None
    assert week.standing.broken == []


def test_a_visit_that_the_planner_would_not_know_is_not_forgotten(house, croft):
    later = MONDAY + timedelta(days=14)
    early = planned(croft, house.van, at("10:00"), head_count=2, due_from=later, due_until=later)
    week = week_of(house)
    assert [week.stops[job].visit for job in week.standing.week[1]] == [early]


def test_a_farm_without_hours_left_has_no_job(house):
    from_later = urgent(due_from=MONDAY + timedelta(days=7), due_until=MONDAY + timedelta(days=9))
    assert week_of(house, from_later).job is None


def test_a_round_that_breaks_a_rule_is_told(house, croft):
    confirmed(croft, house.van, at("10:00"), head_count=2)
    later = confirmed(house.farm, house.van, at("12:00"), head_count=2)
    assert offers(house.farm).broken == []
    Visit.objects.within(house.scope).filter(pk=later.pk).update(planned_start=at("10:30"))
    found = offers(house.farm)
    assert found.broken == [(house.van, TUESDAY)]
    assert all(line.day != TUESDAY for line in found.fits)


def test_confirmed_visits_can_be_seen_as_if_nobody_had_been_promised_anything(house, croft):
    firm, loose = (
        confirmed(croft, house.van, at("10:00"), head_count=2),
        planned(house.farm, house.van, at("13:00"), head_count=2),
    )
    week = week_of(house)
    freed = freed_jobs(week)
    assert list(freed) == [week.job_of(firm.pk)]
    assert loose.pk != firm.pk
    free = freed[week.job_of(firm.pk)]
    assert (free.fixed, len(free.windows) > 1) == (None, True)


def test_a_hold_and_the_visit_that_moves_for_it_stand_where_they_are_to_stand(house, croft):
    filler = planned(croft, house.van, at("09:30"), head_count=28)
    wish = urgent(head_count=30)
    line = next(line for line in offers(house.farm, wish).moves if line.day == TUESDAY)
    held = hold(house, line, wish=wish)
    week = week_of(house)
    spots = {stop.job: (stop.start, stop.is_promised) for stop in week.stops}
    assert spots == {held.job: (held.start, True), f"visit-{filler.pk}": (held.moved_start, True)}
    without = week_of(house, ignore=held)
    assert [(stop.start, stop.is_promised) for stop in without.stops] == [(at("09:30"), False)]


def test_today_begins_where_the_van_is_now(house, croft):
    begun = start_visit(
        visit=confirmed(croft, house.van, at("09:00"), head_count=4),
        checked=True,
        at=at("09:00"),
        by=house.owner,
    )
    later = confirmed(croft, house.van, at("13:30"), head_count=2)
    now = at("09:30")
    week = offer_week(asked_for(house.farm, urgent()), MONDAY, now)
    order = week.standing.week[0]
    assert [week.stops[job].job for job in order] == [f"visit-{begun.pk}", f"visit-{later.pk}"]
    assert week.standing.broken == []
    today = [line for line in offers(house.farm, now=now).fits if line.day == TUESDAY]
    assert today
    free = begun.started_at + timedelta(minutes=begun.expected_minutes)
    assert all(line.first >= free for line in today)


def test_a_day_not_yet_begun_is_open_from_now_on(house):
    now = at("11:00")
    today = [line for line in offers(house.farm, now=now).fits if line.day == TUESDAY]
    assert [line.first > now for line in today] == [True]


def test_a_visit_on_its_way_is_no_visit_to_move(house, croft):
    on_its_way = planned(croft, house.van, at("09:30"), head_count=2)
    now = at("09:25")
    week = offer_week(asked_for(house.farm, urgent()), MONDAY, now)
    (job,) = week.standing.week[0]
    assert week.stops[job].job == f"visit-{on_its_way.pk}"
    assert week.standing.movable(0) == []
    assert len(week.stops) == 1


def test_an_offer_still_stands_until_its_room_is_gone(house, croft):
    asked = asked_for(house.farm, urgent())
    place = AskedPlace(house.van.pk, at("09:00"), at("09:30"))
    found = offer_again(asked, place, SUNDAY_EVENING)
    assert at("09:00") <= found.first <= found.start <= found.last <= at("09:30")
    confirmed(croft, house.van, at("09:30"), head_count=25)
    assert offer_again(asked, place, SUNDAY_EVENING) is None
