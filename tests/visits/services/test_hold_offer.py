"""An hour is held for a farm while it makes up its mind: once, and for nobody else."""

from datetime import timedelta
from itertools import pairwise

import pytest

from tests.factories import MONDAY, NOON, make_cow, make_farm, make_house, make_van, named, planned, wanted
from tests.many_hands import ManyHands
from tests.visits.services.offers import (
    HALF_AN_HOUR,
    SUNDAY_EVENING,
    TUESDAY,
    at,
    held_rows,
    hold,
    offers,
    place_of,
    urgent,
)
from trimops.tenancy.errors import MixedBusinesses
from visits.selectors.offer_again import AskedPlace
from visits.selectors.week_problem import week_problem
from visits.services.ask_visit import WishMakesNoSense
from visits.services.hold_offer import OfferIsGone, OfferToHold, hold_offer
from visits.services.plan_visit import VanIsBusy, plan_visit
from visits.services.set_figures import OwnFigures, set_figures


def on(day, found):
    return [line for line in found if line.day == day]


@pytest.fixture
def tuesday(house):
    """The best offer of that Tuesday."""
    return on(TUESDAY, offers(house.farm).fits)[0]


def test_the_hour_lies_in_the_span_that_was_told_and_is_held_for_half_an_hour(house, tuesday):
    held = held_rows(house.scope).get(pk=hold(house, tuesday).pk)
    assert (held.first_start, held.last_start) == (tuesday.first, tuesday.last)
    assert held.first_start <= held.start <= held.last_start
    assert held.start.minute % 5 == held.start.second == 0
    assert (held.van, held.state, held.by) == (house.van, "held", house.office)
    assert held.until == SUNDAY_EVENING + HALF_AN_HOUR
    assert held.latest_finish - held.last_start == held.finish - held.start == timedelta(minutes=held.minutes)


def test_a_cow_of_another_business_cannot_be_named_for_it(house, tuesday):
    other = make_house("Fell & Beck")
    with pytest.raises(MixedBusinesses):
        hold(house, tuesday, wish=urgent(cows=(named(other.cow),)))
    assert not held_rows(house.scope).exists()


@pytest.mark.parametrize(
    "changes",
    [{"corrective_count": 9, "head_count": 8}, {"head_count": 0}, {"due_until": MONDAY - timedelta(days=9)}],
)
def test_no_hour_is_held_for_a_wish_that_makes_no_sense(house, tuesday, changes):
    with pytest.raises(WishMakesNoSense):
        hold(house, tuesday, wish=urgent(**changes))
    assert not held_rows(house.scope).exists()


def test_a_cow_of_another_farm_cannot_be_named_for_it(house, tuesday):
    other = make_cow(make_farm(house.business, "High Croft", by=house.owner), "7")
    with pytest.raises(WishMakesNoSense, match="another farm"):
        hold(house, tuesday, wish=urgent(cows=(named(other),)))
    assert not held_rows(house.scope).exists()


def test_how_long_it_is_held_is_a_figure_of_the_business(house, tuesday):
    set_figures(business=house.business, figures=OwnFigures({}, {}, {"hold_minutes": 90}))
    assert hold(house, tuesday).until == SUNDAY_EVENING + timedelta(minutes=90)


def test_the_planner_sees_it_as_a_promise_until_it_runs_out(house, tuesday):
    held = hold(house, tuesday)
    week = house.business, TUESDAY - timedelta(days=1)
    (job,) = week_problem(*week, SUNDAY_EVENING)["jobs"]
    shift = f"van-{house.van.pk}-{TUESDAY}"
    assert (job["id"], job["fixed"]) == (held.job, {"shift": shift, "start": held.start.isoformat()})
    assert week_problem(*week, SUNDAY_EVENING + HALF_AN_HOUR)["jobs"] == []


def test_nobody_else_is_offered_the_hour_until_it_runs_out(house, tuesday):
    held = hold(house, tuesday)
    other = make_farm(house.business, "High Croft", by=house.owner)
    meanwhile = on(TUESDAY, offers(other).fits)
    assert meanwhile
    for line in meanwhile:
        assert line.last < held.start or line.first >= held.finish
    assert on(TUESDAY, offers(other, now=held.until).fits)[0].first < held.finish


def test_the_same_hour_cannot_be_held_twice(house, tuesday):
    whole_day = urgent(head_count=30)
    line = on(TUESDAY, offers(house.farm, whole_day).fits)[0]
    hold(house, line, wish=whole_day)
    other = make_farm(house.business, "High Croft", by=house.owner)
    with pytest.raises(OfferIsGone):
        hold(house, line, other, wish=whole_day)
    assert held_rows(house.scope).count() == 1


def test_of_two_farms_with_room_for_both_each_gets_an_hour(house, tuesday):
    other = make_farm(house.business, "High Croft", by=house.owner)
    first, second = hold(house, tuesday), hold(house, tuesday, other)
    assert first.finish <= second.start or second.finish <= first.start


def test_a_visit_is_not_planned_by_hand_into_a_held_hour(house, tuesday):
    held = hold(house, tuesday, now=NOON)
    other = make_farm(house.business, "High Croft", by=house.owner)
    with pytest.raises(VanIsBusy, match="held for Low Croft then, until 12:30"):
        planned(other, house.van, held.start + timedelta(minutes=5))


def test_a_hold_for_which_a_visit_moves_keeps_both_places(house):
    wish = urgent(head_count=30)
    filler = planned(house.farm, house.van, at("09:30"), head_count=28)
    found = [line for line in offers(house.farm, wish).moves if line.moved and line.day == TUESDAY]
    held = hold(house, found[0], wish=wish)
    assert (held.moved_visit, held.moved_van) == (filler, house.van)
    assert held.moved_start == found[0].moved.to_start
    filler.refresh_from_db()
    assert filler.planned_start == at("09:30")


def test_a_place_on_no_van_of_the_business_is_gone(house, tuesday):
    nowhere = AskedPlace(987_654_321, tuesday.first, tuesday.last)
    with pytest.raises(OfferIsGone):
        hold_offer(farm=house.farm, offer=OfferToHold(urgent(), nowhere), at=SUNDAY_EVENING, by=house.office)


HANDS = 4


@pytest.fixture
def many_hands(transactional_db, tmp_path, monkeypatch):
    return ManyHands(tmp_path, monkeypatch)


@pytest.mark.django_db(transaction=True)
def test_of_many_who_hold_the_same_hour_at_the_same_moment_one_gets_it(many_hands, house):
    wish = urgent(head_count=30)
    farms = [make_farm(house.business, f"Farm {n}", by=house.owner) for n in range(HANDS)]
    line = on(TUESDAY, offers(farms[0], wish).fits)[0]

    def press(farm):
        try:
            return hold(house, line, farm, wish=wish).farm_id
        except OfferIsGone:
            return None

    answers = many_hands(press, farms)
    winners = [answer for answer in answers if answer]
    assert (len(winners), answers.count(None)) == (1, HANDS - 1)
    (stored,) = many_hands(lambda scope: list(held_rows(scope).values_list("farm", flat=True)), [house.scope])
    assert stored == winners


@pytest.mark.django_db(transaction=True)
def test_of_many_with_room_for_some_no_two_get_hours_that_overlap(many_hands, house):
    make_van(house.business, house.owner, "Van 2")
    wish = urgent(head_count=12)
    farms = [make_farm(house.business, f"Farm {n}", by=house.owner) for n in range(HANDS)]
    line = on(TUESDAY, offers(farms[0], wish).fits)[0]

    def press(farm):
        try:
            hold(house, line, farm, wish=wish)
        except OfferIsGone:
            return "gone"
        return "held"

    answers = many_hands(press, farms)
    (rows,) = many_hands(lambda scope: list(held_rows(scope).order_by("start")), [house.scope])
    assert (len(rows), place_of(line).moved) == (answers.count("held"), None)
    assert 0 < len(rows) < HANDS
    assert all(one.finish < two.start for one, two in pairwise(rows))


@pytest.mark.django_db(transaction=True)
def test_an_hour_is_not_held_and_planned_by_hand_at_the_same_moment(many_hands, house):
    wish = urgent(head_count=30)
    line = on(TUESDAY, offers(house.farm, wish).fits)[0]
    visit = wanted(make_farm(house.business, "High Croft", by=house.owner), head_count=20)

    def press(way):
        try:
            if way == "hold":
                hold(house, line, wish=wish)
            else:
                plan_visit(visit=visit, van=house.van, start=line.last, at=SUNDAY_EVENING, by=house.owner)
        except (OfferIsGone, VanIsBusy):
            return "refused"
        return way

    assert sorted(many_hands(press, ["hold", "plan"])) in (["hold", "refused"], ["plan", "refused"])
