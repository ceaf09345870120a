from tests.factories import NOON, make_cow, named, wanted
from visits.models import DraftChange
from visits.selectors.draft_view import draft_view
from visits.services.add_draft_cow import add_draft_cow
from visits.services.strike_cow import strike_cow


def listed(visit):
    return [line.number for line in draft_view(visit, NOON).order.present]


def test_she_is_off_the_list_which_gets_one_cow_shorter(house):
    cows = [house.cow, make_cow(house.farm, "102"), make_cow(house.farm, "103")]
    visit = wanted(house.farm, cows=[named(cow) for cow in cows], head_count=3)
    after = strike_cow(visit=visit, cow=cows[1], why="walks well again", at=NOON, by=house.client)
    assert listed(after) == ["101", "103"]
    assert after.head_count == 2
    (change,) = draft_view(after, NOON).struck
    assert (change.why, change.by, change.at) == ("walks well again", house.client, NOON)


def test_where_places_are_free_the_visit_counts_with_as_many_as_before(house):
    visit = wanted(house.farm, cows=[named(house.cow)], head_count=5)
    assert strike_cow(visit=visit, cow=house.cow, why="sold", at=NOON, by=house.client).head_count == 5


def test_a_cow_that_was_added_is_struck_like_any_other_and_one_row_says_so(house):
    visit = wanted(house.farm, head_count=1)
    visit = add_draft_cow(visit=visit, cow=house.cow, why="limps", at=NOON, by=house.client)
    visit = strike_cow(visit=visit, cow=house.cow, why="walks again", at=NOON, by=house.office)
    (row,) = DraftChange.objects.within(house.scope).filter(visit=visit)
    assert (row.kind, row.why, row.by) == ("struck", "walks again", house.office)
    assert listed(visit) == []
