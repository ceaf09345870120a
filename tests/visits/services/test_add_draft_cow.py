import pytest

from tests.factories import NOON, make_cow, named, wanted
from visits.selectors.crush_list import crush_list
from visits.selectors.draft_view import draft_view
from visits.services.add_draft_cow import CowIsOnTheList, add_draft_cow
from visits.services.strike_cow import strike_cow


def test_she_comes_with_why_and_by_whom_and_nobody_falls_off_the_list(house):
    visit = wanted(house.farm, cows=[named(house.cow)], head_count=1)
    after = add_draft_cow(
        visit=visit, cow=make_cow(house.farm, "7"), why="stands on her toe", at=NOON, by=house.client
    )
    assert after.head_count == 2
    order = draft_view(after, NOON).order
    assert [line.number for line in order.present] == ["7", "101"]
    assert order.present[0].why == f"added by {house.client}: stands on her toe"
    assert [line.number for line in crush_list(after)] == ["7", "101"], "the phone has the same list"


def test_a_free_place_is_taken_first(house):
    visit = wanted(house.farm, head_count=5)
    assert add_draft_cow(visit=visit, cow=house.cow, why="limps", at=NOON, by=house.client).head_count == 5


def test_a_cow_on_the_list_is_not_added_twice(house):
    visit = wanted(house.farm, cows=[named(house.cow)])
    with pytest.raises(CowIsOnTheList, match="Cow 101 is on the list already"):
        add_draft_cow(visit=visit, cow=house.cow, why="limps", at=NOON, by=house.client)


def test_a_struck_cow_may_be_added_again(house):
    visit = wanted(house.farm, cows=[named(house.cow)], head_count=1)
    visit = strike_cow(visit=visit, cow=house.cow, why="sold", at=NOON, by=house.client)
    visit = add_draft_cow(visit=visit, cow=house.cow, why="not sold after all", at=NOON, by=house.client)
    view = draft_view(visit, NOON)
    assert [line.number for line in view.order.present] == ["101"]
    assert view.struck == []
