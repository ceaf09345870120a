"""Open re-checks become wanted visits, as few as can be."""

from datetime import timedelta

import pytest

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    put_down,
    trimmed_foot,
    under_way,
    wanted,
)
from visits.domain.actions import BlockKind
from visits.domain.crush_entry import FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.models import AskedCow, Recheck, Visit
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit

DAY = TUESDAY_TEN.date()
LATER = DAY + timedelta(days=1)


@pytest.fixture
def three_blocks(house, visit):
    """Wood on 101 (day 21 to 28), rubber on 102 (21 to 28, for the ulcer), a sore heel on 103 (3 to 7)."""
    put_down(visit, house.cow, blocked_foot())
    put_down(visit, make_cow(house.farm, "102"), blocked_foot(kind=BlockKind.RUBBER))
    sore = FindingEntry(LesionCode.DD, Claw.SKIN, dd_stage=DDStage.M2)
    put_down(visit, make_cow(house.farm, "103"), trimmed_foot(findings=(sore,)))
    finish(visit, house.trimmer)
    return visit


def gather(house, today=LATER):
    return gather_farm_rechecks(farm=house.farm, today=today, at=NOON)


def open_wishes(house):
    return Visit.objects.within(house.scope).open()


def days(*numbers):
    return tuple(DAY + timedelta(days=number) for number in numbers)


def test_cows_whose_days_meet_share_one_visit_on_days_that_fit_all(house, three_blocks):
    soon, late = gather(house)
    assert (soon.due_from, soon.due_until, soon.head_count) == (*days(3, 7), 1)
    assert (late.due_from, late.due_until, late.head_count) == (*days(21, 28), 2)
    assert (late.state, late.reason, late.asked_by) == ("wanted", "recheck", "re-check rule")
    assert late.corrective_count == 2
    for found in Recheck.objects.within(house.scope).open():
        assert found.visit.due_from >= found.due_from
        assert found.visit.due_until <= found.due_until


def test_the_visit_names_its_cows_and_why(house, three_blocks):
    _, late = gather(house)
    why = dict(AskedCow.objects.within(house.scope).filter(visit=late).values_list("cow__number", "why"))
    assert set(why) == {"101", "102"}
    assert why["101"].startswith("left hind: wooden block on inner claw")


def test_two_feet_of_one_cow_are_one_cow(house, visit):
    put_down(visit, house.cow, blocked_foot(), blocked_foot(Foot.RIGHT_HIND))
    finish(visit, house.trimmer)
    (only,) = gather(house)
    assert only.head_count == 1
    assert "left hind" in AskedCow.objects.within(house.scope).get(visit=only).why
    assert "right hind" in AskedCow.objects.within(house.scope).get(visit=only).why


def test_running_it_again_changes_nothing(house, three_blocks):
    first = [visit.pk for visit in gather(house)]
    assert [visit.pk for visit in gather(house)] == first
    assert open_wishes(house).count() == 2
    assert Visit.objects.within(house.scope).count() == 3


def test_what_is_overdue_is_wanted_today(house, three_blocks):
    today = DAY + timedelta(days=60)
    (only,) = gather(house, today)
    assert (only.due_from, only.due_until, only.head_count) == (today, today, 3)


def test_a_wish_whose_cows_changed_is_made_anew_and_the_old_one_called_off(house, visit):
    put_down(visit, house.cow, blocked_foot())
    (first,) = gather(house)
    put_down(visit, make_cow(house.farm, "102"), blocked_foot())
    (second,) = gather(house)
    assert (second.head_count, open_wishes(house).get(reason="recheck")) == (2, second)
    assert Visit.objects.within(house.scope).get(pk=first.pk).state == "called_off"
    assert {found.visit_id for found in Recheck.objects.within(house.scope).open()} == {second.pk}


def test_feet_promised_to_a_visit_with_an_hour_stay_with_it(house, three_blocks):
    soon, late = gather(house)
    start = TUESDAY_TEN + timedelta(days=22)
    plan_visit(visit=late, van=house.van, start=start, at=NOON, by=house.owner)
    assert [visit.pk for visit in gather(house)] == [soon.pk]
    assert Recheck.objects.within(house.scope).open().filter(visit=late).count() == 2


def test_a_visit_put_off_is_used_again(house, three_blocks):
    _, late = gather(house)
    start = TUESDAY_TEN + timedelta(days=22)
    plan_visit(visit=late, van=house.van, start=start, at=NOON, by=house.owner)
    put_off_visit(visit=late, because="Rain", at=NOON, by=house.owner)
    assert late.pk in [visit.pk for visit in gather(house)]
    assert open_wishes(house).count() == 2


def test_a_foot_that_was_not_brought_to_its_visit_is_wanted_again(house, three_blocks):
    _, late = gather(house)
    start = TUESDAY_TEN + timedelta(days=22)
    planned = plan_visit(visit=late, van=house.van, start=start, at=NOON, by=house.owner)
    assert planned.state == "planned"
    Visit.objects.within(house.scope).filter(pk=late.pk).update(state="finished", finished_at=start)
    again = gather(house, start.date())
    assert late.pk not in [visit.pk for visit in again]
    assert sum(visit.head_count for visit in again) == 3


def test_when_every_foot_was_looked_at_the_wish_falls_away(house, three_blocks):
    gather(house)
    Recheck.objects.within(house.scope).update(closed_on=LATER)
    assert gather(house) == []
    assert not open_wishes(house).exists()


def test_a_wish_that_a_person_made_is_never_touched(house, three_blocks):
    from_farm = wanted(house.farm)
    gather(house)
    gather(house)
    assert Visit.objects.within(house.scope).get(pk=from_farm.pk).state == "wanted"


def test_another_farms_feet_are_left_alone(house, three_blocks):
    other = make_farm(house.business, "High Croft", by=house.owner)
    elsewhere = under_way(other, house.van, TUESDAY_TEN + timedelta(hours=6))
    put_down(elsewhere, make_cow(other, "7"), blocked_foot())
    gather(house)
    assert Recheck.objects.within(house.scope).get(farm=other).visit is None
