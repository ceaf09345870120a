"""A visit is wanted."""

from datetime import timedelta

import pytest

from tests.factories import MONDAY, NOON, make_cow, make_farm, make_house, make_wish, named, wanted
from trimops.tenancy.errors import MixedBusinesses
from visits.domain.mobility import MobilityScale
from visits.models import AskedCow, Visit, VisitEvent
from visits.selectors.expected_length import expected_at
from visits.services.ask_visit import CowWish, WishMakesNoSense, ask_visit


def test_a_wish_becomes_a_wanted_visit_with_its_days_and_its_length(house):
    visit = wanted(house.farm, by=house.office, head_count=20, corrective_count=3)
    stored = Visit.objects.within(house.scope).get(pk=visit.pk)
    assert (stored.state, stored.reason, stored.asked_by) == ("wanted", "routine", "The herd manager")
    assert (stored.due_from, stored.due_until) == (MONDAY, MONDAY + timedelta(days=11))
    assert stored.expected_minutes == expected_at(house.farm, head_count=20, corrective_count=3).minutes
    assert stored.planned_start is None
    assert VisitEvent.objects.within(house.scope).get(visit=visit).by == house.office


def test_more_cows_take_longer_and_lame_ones_longer_still(house):
    few, many = wanted(house.farm, head_count=10), wanted(house.farm, head_count=30)
    lame = wanted(house.farm, head_count=30, corrective_count=15)
    assert few.expected_minutes < many.expected_minutes < lame.expected_minutes


def test_cows_are_named_with_why_and_how_they_walk(house):
    other = make_cow(house.farm, "102")
    scored = CowWish(house.cow, "Will not put weight on it", MobilityScale.UK, 3)
    visit = wanted(house.farm, cows=(scored, named(other, "Block due off")))
    rows = {row.cow_id: row for row in AskedCow.objects.within(house.scope).filter(visit=visit)}
    assert rows[house.cow.pk].mobility_scale == "UK0-3"
    assert rows[house.cow.pk].mobility_score == 3
    assert rows[other.pk].why == "Block due off"


NONSENSE = {
    "days the wrong way round": ({"due_until": MONDAY - timedelta(days=1)}, "before the first"),
    "no cow": ({"head_count": 0}, "at least one cow"),
    "more lame cows than cows": ({"corrective_count": 13}, "More lame cows than cows"),
}


@pytest.mark.parametrize(("changes", "said"), NONSENSE.values(), ids=NONSENSE)
def test_a_wish_that_makes_no_sense_is_refused_with_what_to_mend(house, changes, said):
    with pytest.raises(WishMakesNoSense, match=said):
        wanted(house.farm, **changes)
    assert not Visit.objects.within(house.scope).exists()


def test_a_cow_of_another_farm_cannot_be_named(house):
    elsewhere = make_cow(make_farm(house.business, "High Croft", by=house.owner), "7")
    with pytest.raises(WishMakesNoSense, match="another farm"):
        wanted(house.farm, cows=(named(elsewhere),))


def test_a_cow_of_another_business_cannot_be_named(house):
    theirs = make_house("Fell & Beck")
    wish = make_wish(cows=(named(theirs.cow),))
    with pytest.raises(MixedBusinesses):
        ask_visit(farm=house.farm, wish=wish, at=NOON, by=house.owner)
