import pytest

from tests.factories import NOON, make_cow, named, wanted
from visits.selectors.draft_view import draft_view
from visits.services.expect_cows import CountMakesNoSense, expect_cows


def test_the_list_is_cut_there_and_lame_ones_are_counted_by_it(house):
    cows = [named(make_cow(house.farm, str(number))) for number in range(3)]
    visit = wanted(house.farm, cows=cows, head_count=9, corrective_count=4)
    after = expect_cows(visit=visit, count=5, at=NOON, by=house.office)
    assert (after.head_count, after.corrective_count) == (5, 0)
    assert draft_view(after, NOON).free_places == 2


@pytest.mark.parametrize("count", [0, 501])
def test_no_visit_has_so_many_cows(house, count):
    with pytest.raises(CountMakesNoSense):
        expect_cows(visit=wanted(house.farm), count=count, at=NOON, by=house.office)
