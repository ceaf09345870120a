"""A visit begins, and with it the watch."""

from datetime import timedelta
from uuid import uuid4

import pytest

from tests.factories import TUESDAY_TEN, finish, make_house, make_van, planned, under_way
from tests.visits.services.lone_watch.watched import (
    addresses,
    again,
    look,
    sent,
    watch_of,
    went,
)
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import CrushWriting, LoneWatch, Visit
from visits.services.lone_watch.begin_watch import begin_watch
from visits.services.start_visit import start_visit


def watches(house):
    return LoneWatch.objects.within(house.scope)


def test_whoever_begins_a_visit_is_watched_over_from_then_on(house):
    visit = under_way(house.farm, house.van)
    watch = watches(house).get()
    assert (watch.visit, watch.trimmer, watch.van) == (visit, house.trimmer, house.van)
    assert watch.state == WatchState.WATCHING
    assert watch.expected_finish == TUESDAY_TEN + timedelta(minutes=visit.expected_minutes)
    assert watch.next_at == watch.expected_finish + timedelta(minutes=30)


@pytest.mark.django_db
def test_where_it_is_off_nothing_begins():
    house = make_house()
    under_way(house.farm, house.van)
    assert not watches(house).exists()


def test_beginning_twice_is_one_watch(house):
    watch = watch_of(house)
    same = begin_watch(visit=watch.visit, trimmer=house.owner, at=TUESDAY_TEN + timedelta(hours=1))
    assert same.pk == watch.pk
    assert again(watch).trimmer == house.trimmer
    assert again(watch).began_at == TUESDAY_TEN


def by_plan(house):
    visit = planned(house.farm, house.van)
    return begin_watch(visit=visit, trimmer=house.trimmer, at=TUESDAY_TEN, is_by_plan=True)


def test_the_real_beginning_takes_over_what_the_plan_began(house):
    watch = by_plan(house)
    late = TUESDAY_TEN + timedelta(minutes=40)
    start_visit(visit=watch.visit, checked=True, at=late, by=house.owner)
    found = watches(house).get()
    assert (found.pk, found.is_by_plan, found.trimmer, found.began_at) == (watch.pk, False, house.owner, late)
    look(watch, 30)
    assert again(watch).state == WatchState.WATCHING
    assert again(watch).next_at == late + (watch.expected_finish - TUESDAY_TEN) + timedelta(minutes=30)


def test_who_begins_after_the_question_is_well_and_whoever_was_told_hears_of_it(house):
    watch = by_plan(house)
    look(watch, 30), look(watch, 40)
    went(house)
    later = again(watch).told_at + timedelta(minutes=1)
    start_visit(visit=watch.visit, checked=True, at=later, by=house.trimmer)
    assert again(watch).state == WatchState.WATCHING
    last = sent(house)[-1]
    assert last.address == "neighbour@home.example"
    assert "began the visit" in last.body


def test_a_beginning_before_the_question_heard_of_late_says_nothing_of_now(house):
    """The phone had no network: that he began at ten does not say that he is well at noon."""
    watch = by_plan(house)
    look(watch, 30), look(watch, 40)
    start_visit(visit=watch.visit, checked=True, at=TUESDAY_TEN, by=house.trimmer)
    assert again(watch).state == WatchState.TOLD
    assert "neighbour@home.example" in addresses(house)


def test_a_farm_whose_last_visits_came_in_late_is_known_to_have_no_network(house):
    for days in (30, 20, 10):
        visit = under_way(house.farm, house.van, TUESDAY_TEN - timedelta(days=days))
        made = visit.started_at
        CrushWriting.objects.create(
            business=house.business,
            uid=uuid4(),
            visit=visit,
            kind="cow",
            record=uuid4(),
            phone=uuid4(),
            made_at=made,
            placed_at=made,
            received_at=made + timedelta(hours=4),
            by=house.trimmer,
        )
        finish(visit, house.trimmer)
    watch = watch_of(house)
    assert watch.is_quiet_place
    assert watch.next_at == watch.expected_finish + timedelta(minutes=60)


def test_a_beginning_with_another_van_is_watched_for_that_van(house):
    """Whom to tell hangs on the van."""
    watch = by_plan(house)
    van = make_van(house.business, house.owner, "Van 2")
    Visit.objects.within(house.scope).filter(pk=watch.visit_id).update(van=van)
    visit = Visit.objects.within(house.scope).get(pk=watch.visit_id)
    start_visit(visit=visit, checked=True, at=TUESDAY_TEN + timedelta(minutes=5), by=house.owner)
    assert (again(watch).van, again(watch).trimmer, again(watch).is_by_plan) == (van, house.owner, False)
