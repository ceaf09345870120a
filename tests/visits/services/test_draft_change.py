"""What a changed list does to the visit's counts, its length and its place in the diary."""

from datetime import timedelta

import pytest

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    confirmed,
    in_state,
    make_cow,
    make_farm,
    make_house,
    named,
    planned,
    wanted,
)
from trimops.tenancy.errors import MixedBusinesses
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitState
from visits.models import ShiftPattern, VisitEvent
from visits.selectors.draft_time import draft_time
from visits.selectors.draft_view import draft_view
from visits.services.add_draft_cow import add_draft_cow
from visits.services.ask_visit import CowWish
from visits.services.draft_change import CowCannotCome, DayIsFull, DraftIsClosed
from visits.services.expect_cows import expect_cows
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.strike_cow import strike_cow

TWO_HOURS = timedelta(hours=2)


def count(visit, cows, house):
    return expect_cows(visit=visit, count=cows, at=NOON, by=house.office)


def test_a_wanted_visit_lasts_as_long_as_its_list(house):
    lame = CowWish(make_cow(house.farm, "7"), "walks badly", MobilityScale.UK, 2)
    visit = wanted(house.farm, head_count=2, cows=[lame])
    before = visit.expected_minutes
    after = count(visit, 3, house)
    assert (after.head_count, after.corrective_count) == (3, 1)
    assert after.expected_minutes == before + 7 + 6, (
        "one usual cow more, and one of the two is lame: 13 for 7"
    )


def test_a_visit_with_an_hour_lasts_longer_where_that_moves_nobody(house):
    visit = planned(house.farm, house.van, head_count=2)
    after = count(visit, 4, house)
    assert after.expected_minutes == visit.expected_minutes + 14
    assert after.planned_finish == after.planned_start + timedelta(minutes=after.expected_minutes)
    assert after.planned_start == visit.planned_start


def test_it_keeps_its_minutes_where_the_next_farm_would_have_to_wait(house):
    visit = confirmed(house.farm, house.van, head_count=2)
    there = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")
    second = planned(there, house.van, TUESDAY_TEN + TWO_HOURS, head_count=2)
    after = count(visit, 20, house)
    assert after.head_count == 20
    assert (after.expected_minutes, after.planned_finish) == (visit.expected_minutes, visit.planned_finish)
    second.refresh_from_db()
    assert second.planned_start == TUESDAY_TEN + TWO_HOURS
    time = draft_time(after, draft_view(after, NOON).order, NOON)
    assert 2 <= time.room < 20
    assert count(visit, time.room, house).expected_minutes > visit.expected_minutes
    assert (
        count(visit, time.room + 1, house).expected_minutes == count(visit, time.room, house).expected_minutes
    )


def test_another_hour_gives_a_list_that_had_no_room_all_its_time(house):
    visit = planned(house.farm, house.van, head_count=2)
    there = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")
    planned(there, house.van, TUESDAY_TEN + TWO_HOURS, head_count=2)
    before = visit.expected_minutes
    for number in range(10):
        cow = make_cow(house.farm, str(number))
        visit = add_draft_cow(visit=visit, cow=cow, why="limps", at=NOON, by=house.client)
    assert visit.head_count == 10
    assert visit.expected_minutes < before + 8 * 7
    thursday = TUESDAY_TEN + timedelta(days=2)
    later = plan_visit(visit=visit, van=house.van, start=thursday, at=NOON, by=house.office)
    assert later.expected_minutes == before + 8 * 7
    assert later.planned_finish == thursday + timedelta(minutes=later.expected_minutes)


def test_put_off_it_asks_for_all_the_time_of_its_list(house):
    visit = planned(house.farm, house.van, head_count=2)
    there = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")
    planned(there, house.van, TUESDAY_TEN + TWO_HOURS, head_count=2)
    add_draft_cow(visit=visit, cow=house.cow, why="limps", at=NOON, by=house.client)
    assert count(visit, 20, house).expected_minutes < visit.expected_minutes + 18 * 7
    after = put_off_visit(visit=visit, because="no room", at=NOON, by=house.office)
    assert after.expected_minutes == visit.expected_minutes + 18 * 7


def test_a_milking_ends_the_room_as_the_next_farm_does(house):
    """The farm milks at four and an hour before that no cow is to be had."""
    visit = planned(house.farm, house.van, TUESDAY_TEN + 3 * TWO_HOURS / 2, head_count=2)
    room = draft_time(visit, draft_view(visit, NOON).order, NOON).room
    longest = count(visit, room, house)
    assert (
        longest.planned_finish <= TUESDAY_TEN.replace(hour=15) < longest.planned_finish + timedelta(minutes=7)
    )


def test_a_van_takes_no_more_cows_than_its_day_may_have(house):
    ShiftPattern.objects.within(house.scope).update(max_cows=10)
    visit = planned(house.farm, house.van, head_count=9)
    assert count(visit, 10, house).head_count == 10
    with pytest.raises(DayIsFull, match="no more cows that day"):
        count(visit, 11, house)
    visit.refresh_from_db()
    assert visit.head_count == 10


@pytest.mark.parametrize("state", [VisitState.UNDER_WAY, VisitState.FINISHED, VisitState.CALLED_OFF])
def test_once_the_work_began_the_list_stands(house, state):
    visit = in_state(state, house.farm, house.van)
    words = {"visit": visit, "cow": house.cow, "why": "sold", "at": NOON, "by": house.office}
    with pytest.raises(DraftIsClosed, match="its draft list stands"):
        strike_cow(**words)
    with pytest.raises(DraftIsClosed):
        add_draft_cow(**words)
    with pytest.raises(DraftIsClosed):
        count(visit, 3, house)


def test_a_cow_of_elsewhere_or_who_has_left_is_refused(house):
    visit = wanted(house.farm)
    there = make_farm(house.business, "High Croft", by=house.owner)
    gone = make_cow(house.farm, "8", status="sold")
    for cow, words in ((make_cow(there, "9"), "on another farm"), (gone, "has left the farm")):
        with pytest.raises(CowCannotCome, match=words):
            add_draft_cow(visit=visit, cow=cow, why="limps", at=NOON, by=house.office)


def test_a_cow_of_another_business_is_refused(house):
    stranger = make_house("Fell & Beck").cow
    with pytest.raises(MixedBusinesses):
        add_draft_cow(visit=wanted(house.farm), cow=stranger, why="limps", at=NOON, by=house.office)


def test_every_change_stands_in_the_history_of_the_visit(house):
    visit = wanted(house.farm, cows=[named(house.cow)], head_count=1)
    strike_cow(visit=visit, cow=house.cow, why="sold on Friday", at=NOON, by=house.client)
    event = VisitEvent.objects.within(house.scope).filter(visit=visit).last()
    assert (event.note, event.by) == (
        "cow 101 struck from the draft list: sold on Friday; 1 cow now",
        house.client,
    )
