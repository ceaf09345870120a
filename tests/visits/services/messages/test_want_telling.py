"""Whoever tells farms by itself hears of each change, and of nothing else."""

from datetime import timedelta

from tests.factories import NOON, TUESDAY_TEN, confirmed, finish, planned, under_way, wanted
from tests.visits.services.messages.told_farms import errands, switch_on
from trimops.jobs import Job
from visits.domain.messages.message_kinds import MessageKind
from visits.models import VisitMessage
from visits.services.confirm_visit import confirm_visit
from visits.services.expect_cows import expect_cows
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.tell_hour import tell_hour


def known(house):
    return [row.hour for row in VisitMessage.objects.within(house.scope).filter(contact=None)]


def test_a_new_hour_is_looked_at_two_minutes_later(house):
    switch_on(house)
    visit = planned(house.farm, house.van)
    (errand,) = errands(house, Job.TELL_FARMS)
    assert (errand.ids, errand.due_at) == ({"visit_id": visit.pk}, NOON + timedelta(minutes=2))


def test_nothing_is_left_to_do_where_nothing_is_switched_on(house):
    finish(under_way(house.farm, house.van), house.trimmer)
    confirmed(house.farm, house.van, TUESDAY_TEN + timedelta(days=1))
    assert not errands(house, Job.TELL_FARMS) + errands(house, Job.TELL_NEXT)
    assert known(house) == []


def test_a_wish_a_start_and_a_finish_are_no_news_of_an_hour(house):
    visit = under_way(house.farm, house.van)
    switch_on(house)
    wanted(house.farm)
    finish(visit, house.trimmer)
    assert errands(house, Job.TELL_FARMS) == []
    assert len(errands(house, Job.TELL_NEXT)) == 1


def test_cows_more_or_less_are_no_news_of_an_hour(house):
    visit = planned(house.farm, house.van)
    switch_on(house)
    expect_cows(visit=visit, count=3, at=NOON, by=house.office)
    assert errands(house, Job.TELL_FARMS) == []


def test_what_the_farm_knew_is_kept_when_the_hour_goes(house):
    switch_on(house)
    visit = planned(house.farm, house.van)
    tell_hour(visit=visit, at=NOON, by=house.office)
    put_off_visit(visit=visit, because="Ill", at=NOON, by=house.office)
    assert known(house) == [TUESDAY_TEN]


def test_an_hour_agreed_is_known_and_kept_once(house):
    switch_on(house)
    visit = planned(house.farm, house.van)
    for _ in range(2):
        confirm_visit(visit=visit, at=NOON, by=house.office)
        put_off_visit(visit=visit, because="Ill", at=NOON, by=house.office)
        plan_visit(visit=visit, van=house.van, start=TUESDAY_TEN, at=NOON, by=house.office)
    assert known(house) == [TUESDAY_TEN]


def test_an_hour_that_nobody_was_told_is_not_known(house):
    switch_on(house)
    visit = planned(house.farm, house.van)
    put_off_visit(visit=visit, because="Ill", at=NOON, by=house.office)
    assert known(house) == []


def test_on_the_way_alone_leaves_the_diary_in_peace(house):
    switch_on(house, MessageKind.ON_THE_WAY)
    finish(under_way(house.farm, house.van), house.trimmer)
    assert not errands(house, Job.TELL_FARMS)
    assert len(errands(house, Job.TELL_NEXT)) == 1
