from tests.factories import NOON, make_cow, named, wanted
from visits.models import DraftChange
from visits.selectors.draft_view import draft_view
from visits.services.add_draft_cow import add_draft_cow
from visits.services.strike_cow import strike_cow
from visits.services.take_back_draft_change import take_back_draft_change


def listed(visit):
    return [line.number for line in draft_view(visit, NOON).order.present]


def change_of(visit, house):
    return DraftChange.objects.within(house.scope).get(visit=visit)


def test_a_struck_cow_comes_again_and_the_list_is_as_it_was(house):
    visit = wanted(house.farm, cows=[named(house.cow), named(make_cow(house.farm, "7"))], head_count=2)
    struck = strike_cow(visit=visit, cow=house.cow, why="sold", at=NOON, by=house.client)
    back = take_back_draft_change(change=change_of(struck, house), at=NOON, by=house.client)
    assert (listed(back), back.head_count, back.expected_minutes) == (
        listed(visit),
        visit.head_count,
        visit.expected_minutes,
    )


def test_an_added_cow_goes_and_the_list_is_as_it_was(house):
    visit = wanted(house.farm, cows=[named(house.cow)], head_count=1)
    added = add_draft_cow(visit=visit, cow=make_cow(house.farm, "7"), why="limps", at=NOON, by=house.client)
    back = take_back_draft_change(change=change_of(added, house), at=NOON, by=house.client)
    assert (listed(back), back.head_count) == (["101"], 1)


def test_a_cow_that_was_on_no_list_when_she_was_struck_makes_it_no_longer(house):
    visit = wanted(house.farm, cows=[named(house.cow)], head_count=1)
    other = make_cow(house.farm, "7")
    struck = strike_cow(visit=visit, cow=other, why="sold", at=NOON, by=house.client)
    assert struck.head_count == 1
    back = take_back_draft_change(change=change_of(struck, house), at=NOON, by=house.client)
    assert (listed(back), back.head_count) == (["101"], 1)


def test_taking_it_back_twice_changes_nothing(house):
    visit = wanted(house.farm, cows=[named(house.cow)], head_count=1)
    struck = strike_cow(visit=visit, cow=house.cow, why="sold", at=NOON, by=house.client)
    change = change_of(struck, house)
    first = take_back_draft_change(change=change, at=NOON, by=house.client)
    again = take_back_draft_change(change=change, at=NOON, by=house.client)
    assert again.calendar_sequence == first.calendar_sequence
