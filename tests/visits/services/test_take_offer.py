"""The farm says yes to an hour that is held."""

from datetime import timedelta

import pytest

from tests.factories import make_farm, planned
from tests.many_hands import ManyHands
from tests.visits.services.offers import (
    HALF_AN_HOUR,
    SUNDAY_EVENING,
    TUESDAY,
    at,
    held_rows,
    hold,
    offers,
    urgent,
)
from visits.domain.mobility import MobilityScale
from visits.models import Visit
from visits.services.ask_visit import CowWish
from visits.services.call_off_visit import call_off_visit
from visits.services.hold_offer import OfferIsGone
from visits.services.let_go_offer import HourIsNotHeld, let_go_offer
from visits.services.take_offer import take_offer

SOON = SUNDAY_EVENING + timedelta(minutes=5)


def on_tuesday(found):
    return [line for line in found if line.day == TUESDAY]


def take(house, held, now=SOON, **more):
    return take_offer(held=held, at=now, by=house.office, **more)


def stored(house, visit):
    return Visit.objects.within(house.scope).get(pk=visit.pk)


@pytest.fixture
def held(house):
    wish = urgent(
        mobility_scale=MobilityScale.UK,
        mobility_score=2,
        corrective_count=1,
        note="Cow 101",
        asked_by="Phone",
    )
    return hold(house, on_tuesday(offers(house.farm, wish).fits)[0], wish=wish)


def test_it_becomes_a_confirmed_visit_as_it_was_asked_for(house, held):
    visit = stored(house, take(house, held))
    assert (visit.state, visit.van, visit.planned_start) == ("confirmed", house.van, held.start)
    assert (visit.reason, visit.head_count, visit.corrective_count) == ("urgent", 2, 1)
    assert (visit.asked_by, visit.note) == ("Phone", "Cow 101")
    assert (visit.mobility_scale, visit.mobility_score) == (MobilityScale.UK.value, 2)
    assert visit.planned_finish == held.finish
    row = held_rows(house.scope).get()
    assert (row.state, row.visit, row.ended_at) == ("taken", visit, SOON)


def test_the_cows_that_were_named_are_asked_for_with_score_and_day(house):
    cow = CowWish(house.cow, "lame", MobilityScale.UK, 3, TUESDAY - timedelta(days=4))
    wish = urgent(cows=(cow,))
    held = hold(house, on_tuesday(offers(house.farm).fits)[0], wish=wish)
    visit = take(house, held)
    (asked,) = visit.asked_cows.within(house.scope)
    told = CowWish(
        asked.cow, asked.why, MobilityScale(asked.mobility_scale), asked.mobility_score, asked.lame_since
    )
    assert told == cow


def test_another_hour_within_the_span_told_can_be_chosen(house, held):
    assert take(house, held, start=held.last_start).planned_start == held.last_start


def test_an_hour_outside_the_span_is_refused_and_nothing_is_lost(house, held):
    with pytest.raises(OfferIsGone, match="outside the hours"):
        take(house, held, start=held.last_start + timedelta(minutes=1))
    assert held_rows(house.scope).get().state == "held"
    assert not Visit.objects.within(house.scope).exists()


def test_a_hold_that_has_run_out_is_not_taken(house, held):
    with pytest.raises(HourIsNotHeld, match="has run out"):
        take(house, held, now=SUNDAY_EVENING + HALF_AN_HOUR)


def test_a_hold_that_was_let_go_is_not_taken(house, held):
    let_go_offer(held=held, at=SOON)
    with pytest.raises(HourIsNotHeld, match="is let go"):
        take(house, held)


def test_it_is_taken_once(house, held):
    take(house, held)
    with pytest.raises(HourIsNotHeld, match="is taken"):
        take(house, held)
    assert Visit.objects.within(house.scope).count() == 1


def test_a_planned_visit_whose_hour_is_not_in_the_way_keeps_it(house):
    other = planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, at("12:30"), head_count=2
    )
    line = next(line for line in on_tuesday(offers(house.farm).fits) if line.first < at("11:00"))
    take(house, hold(house, line))
    assert stored(house, other).planned_start == at("12:30")


def test_a_planned_visit_in_the_way_gets_another_hour_the_same_day(house):
    other = planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, at("09:30"), head_count=2
    )
    line = next(line for line in on_tuesday(offers(house.farm).fits) if line.first < at("09:30"))
    visit = take(house, hold(house, line), start=line.last)
    moved = stored(house, other)
    assert (moved.state, moved.van) == ("planned", house.van)
    assert moved.planned_start >= visit.planned_finish
    assert moved.events.within(house.scope).filter(note="makes room for Low Croft").count() == 1


@pytest.fixture
def with_a_move(house):
    """A hold of a long visit, and the planned one that moves to another day for it."""
    filler = planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, at("09:30"), head_count=28
    )
    wish = urgent(head_count=30)
    return hold(house, on_tuesday(offers(house.farm, wish).moves)[0], wish=wish), filler


def test_the_visit_that_moves_for_it_moves_when_it_is_taken(house, with_a_move):
    held, filler = with_a_move
    visit = take(house, held)
    moved = stored(house, filler)
    assert (visit.planned_start.date(), moved.state) == (TUESDAY, "planned")
    assert (moved.van, moved.planned_start) == (held.moved_van, held.moved_start)
    assert moved.planned_start.date() != TUESDAY


def test_where_the_other_visit_is_gone_it_is_taken_without_a_move(house, with_a_move):
    held, filler = with_a_move
    call_off_visit(visit=filler, because="Snow", at=SOON, by=house.owner)
    assert take(house, held).planned_start == held.start
    assert stored(house, filler).state == "called_off"


def test_an_hour_that_the_week_has_no_room_for_any_more_is_refused(house, held):
    # because: what stands in the diary by other ways than these services is taken as it is
    other = planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, at("09:30"), head_count=2
    )
    Visit.objects.within(house.scope).filter(pk=other.pk).update(
        state="confirmed", planned_start=held.start, planned_finish=held.finish
    )
    with pytest.raises(OfferIsGone, match="cannot be kept"):
        take(house, held)
    assert held_rows(house.scope).get().state == "held"


@pytest.mark.django_db(transaction=True)
def test_of_many_who_take_it_at_the_same_moment_one_makes_the_visit(
    transactional_db, tmp_path, monkeypatch, house
):
    many_hands = ManyHands(tmp_path, monkeypatch)
    held = hold(house, on_tuesday(offers(house.farm).fits)[0])

    def press(_):
        try:
            return take(house, held).pk
        except HourIsNotHeld:
            return None

    answers = many_hands(press, range(4))
    assert answers.count(None) == 3
    (made,) = many_hands(lambda scope: Visit.objects.within(scope).count(), [house.scope])
    assert made == 1
