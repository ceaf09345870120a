"""A farm is told what is new of its hour: once, whatever happened in between."""

from datetime import timedelta

import pytest

from tests.factories import NOON, TUESDAY_TEN, confirmed, make_van, planned
from tests.visits.services.messages.told_farms import (
    SETTLED,
    again,
    errands,
    mailed,
    subjects,
    switch_on,
    texted,
    written,
)
from trimops.errands.kinds import TryLater
from trimops.jobs import Job
from visits.domain.messages.message_kinds import MessageKind
from visits.models import VisitEvent, VisitMessage
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.messages.tell_hour_news import tell_hour_news
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.start_visit import start_visit
from visits.services.tell_hour import tell_hour

HOUR = timedelta(hours=1)
THURSDAY = TUESDAY_TEN + timedelta(days=2)


def tell(visit, at=NOON + SETTLED):
    return [message.kind for message in tell_hour_news(visit=again(visit), at=at)]


def move(house, visit, start, at=NOON):
    return plan_visit(visit=visit, van=house.van, start=start, at=at, by=house.office)


@pytest.fixture
def told(house):
    """A visit of Thursday whose farm was told so at noon on Monday."""
    switch_on(house)
    mailed(house)
    visit = planned(house.farm, house.van, THURSDAY)
    assert tell(visit) == ["booked"]
    return visit


def test_a_new_hour_is_told_and_the_farm_counts_on_it(house, told):
    row = again(told)
    assert row.hour_told == THURSDAY
    assert subjects(house) == ["Foot trimming at Low Croft, Thursday 5 March, 10:00"]
    note = VisitEvent.objects.within(house.scope).filter(visit=told).last().note
    assert note == "told its hour by e-mail to Ann Mail"


def test_the_same_again_tells_nobody_twice(house, told):
    assert tell(told) == []
    confirm_visit(visit=told, at=NOON, by=house.office)
    assert tell(told) == []
    assert len(written(house)) == 1


def test_a_visit_moved_twice_is_told_once(house, told):
    move(house, told, THURSDAY + HOUR)
    with pytest.raises(TryLater):
        tell(told, NOON + timedelta(minutes=1))
    move(house, told, THURSDAY + 2 * HOUR, NOON + timedelta(minutes=1))
    with pytest.raises(TryLater):
        tell(told, NOON + timedelta(minutes=2))
    assert tell(told, NOON + timedelta(minutes=4)) == ["moved"]
    assert tell(told, NOON + timedelta(minutes=4)) == []
    assert "12:00" in subjects(house)[-1]
    assert "It was: Thursday 5 March, 10:00" in written(house)[-1].body


def test_a_visit_moved_away_and_back_before_anybody_was_told_is_no_news(house, told):
    move(house, told, THURSDAY + HOUR)
    move(house, told, THURSDAY)
    assert tell(told) == []


def test_an_hour_that_comes_back_after_another_was_told_is_told_again(house, told):
    for start in (THURSDAY + HOUR, THURSDAY, THURSDAY + HOUR):
        move(house, told, start)
        assert tell(told) == ["moved"]
    assert again(told).hour_told == THURSDAY + HOUR


@pytest.mark.parametrize(("minutes", "kinds"), [(5, []), (9, []), (10, ["moved"]), (-10, ["moved"])])
def test_a_small_move_within_the_day_is_not_told(house, told, minutes, kinds):
    move(house, told, THURSDAY + timedelta(minutes=minutes))
    assert tell(told) == kinds


def test_small_moves_that_add_up_are_told(house, told):
    move(house, told, THURSDAY + timedelta(minutes=6))
    assert tell(told) == []
    move(house, told, THURSDAY + timedelta(minutes=12))
    assert tell(told) == ["moved"]


def test_told_then_called_off(house, told):
    call_off_visit(visit=told, because="They rang", at=NOON, by=house.office)
    assert tell(told) == ["called_off"]
    assert tell(told) == []
    assert again(told).hour_told is None
    assert subjects(house)[-1] == "Foot trimming at Low Croft called off"
    assert "They rang" not in written(house)[-1].body


def test_put_off_is_told_and_a_new_hour_is_booked_after_it(house, told):
    put_off_visit(visit=told, because="Van broken", at=NOON, by=house.office)
    assert tell(told) == ["put_off"]
    move(house, told, THURSDAY + HOUR)
    assert tell(told) == ["booked"]


def test_put_off_and_planned_anew_before_anybody_was_told_is_a_move(house, told):
    put_off_visit(visit=told, because="Van broken", at=NOON, by=house.office)
    move(house, told, THURSDAY + HOUR)
    assert tell(told) == ["moved"]


def test_put_off_and_back_at_the_same_hour_is_no_news_and_the_farm_still_counts_on_it(house, told):
    put_off_visit(visit=told, because="Van broken", at=NOON, by=house.office)
    move(house, told, THURSDAY)
    assert tell(told) == []
    assert again(told).hour_told == THURSDAY


def test_what_nobody_was_told_is_not_taken_back(house):
    switch_on(house)
    mailed(house)
    visit = planned(house.farm, house.van, THURSDAY)
    call_off_visit(visit=visit, because="They rang", at=NOON, by=house.office)
    assert tell(visit) == []


@pytest.mark.parametrize("by_hand", [True, False])
def test_an_hour_that_was_told_by_hand_or_agreed_is_taken_back_too(house, by_hand):
    switch_on(house)
    mailed(house)
    if by_hand:
        visit = planned(house.farm, house.van, THURSDAY)
        tell_hour(visit=visit, at=NOON, by=house.office)
    else:
        visit = confirmed(house.farm, house.van, THURSDAY)
    put_off_visit(visit=visit, because="Ill", at=NOON, by=house.office)
    assert tell(visit) == ["put_off"]


def test_a_visit_that_began_or_whose_hour_is_over_is_not_told(house, told):
    late = THURSDAY + HOUR
    call_off_visit(visit=told, because="Nobody there", at=late, by=house.office)
    assert tell(told, late + SETTLED) == []
    other = planned(house.farm, house.van, THURSDAY + 3 * HOUR)
    start_visit(visit=other, checked=True, at=NOON, by=house.trimmer)
    assert tell(other) == []


def test_a_kind_that_is_off_tells_nobody_and_leaves_no_errand(house):
    mailed(house)
    visit = planned(house.farm, house.van, THURSDAY)
    assert errands(house, Job.TELL_FARMS) == []
    assert tell(visit) == []
    switch_on(house, MessageKind.CALLED_OFF)
    move(house, visit, THURSDAY + HOUR)
    assert len(errands(house, Job.TELL_FARMS)) == 1
    assert tell(visit) == []
    assert again(visit).hour_told is None


def test_quiet_hours_are_waited_for_and_then_what_is_so_by_then_is_told(house):
    switch_on(house)
    texted(house)
    evening = NOON + timedelta(hours=9)
    visit = move(house, planned(house.farm, house.van, THURSDAY), THURSDAY + HOUR, evening)
    with pytest.raises(TryLater) as later:
        tell(visit, evening + SETTLED)
    assert later.value.at == NOON + timedelta(hours=19)
    move(house, visit, THURSDAY + 2 * HOUR, evening + HOUR)
    assert tell(visit, later.value.at) == ["booked"]
    assert "12:00" in subjects(house)[-1]


def test_a_visit_of_the_early_morning_called_off_in_the_night_wakes_the_farm(house):
    switch_on(house)
    mailed(house)
    early = TUESDAY_TEN.replace(hour=7, minute=30)
    visit = planned(house.farm, house.van, early)
    assert tell(visit) == ["booked"]
    night = NOON + timedelta(hours=11)
    call_off_visit(visit=visit, because="Ill", at=night, by=house.office)
    assert tell(visit, night + SETTLED) == ["called_off"]
    assert written(house)[-1].not_before is None


def test_of_a_visit_that_comes_into_tomorrow_late_the_day_before_is_told_at_once_and_only_that(house):
    switch_on(house)
    mailed(house)
    five = NOON + timedelta(hours=5)
    visit = move(house, planned(house.farm, house.van, THURSDAY), TUESDAY_TEN, five)
    assert tell(visit, five + SETTLED) == ["tomorrow"]
    assert tell(visit, five + SETTLED) == []
    move(house, visit, TUESDAY_TEN + HOUR, five)
    assert tell(visit, five + SETTLED) == ["moved"]


def test_messages_hang_on_what_was_put_out(house, told):
    message = VisitMessage.objects.within(house.scope).get()
    assert message.outgoing == written(house)[0]
    assert (message.contact.name, message.hour) == ("Ann Mail", THURSDAY)


def test_a_week_moved_to_another_van_at_the_same_hour_is_no_news(house, told):
    other = make_van(house.business, house.trimmer, "Van 2")
    plan_visit(visit=told, van=other, start=THURSDAY, at=NOON, by=house.office)
    assert tell(told) == []
