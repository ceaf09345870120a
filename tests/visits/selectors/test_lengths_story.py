from tests.factories import NOON, make_farm
from tests.visits.past_visits import make_past
from visits.selectors.lengths_story import lengths_story
from visits.services.learn_visit_lengths import learn_visit_lengths


def test_before_there_is_history_it_says_how_many_visits_are_wanted(house):
    make_past(house, house.farm, 3)
    story = lengths_story(house.business)
    assert story.row is None
    assert (story.finished, story.fewest) == (3, 15)


def test_it_names_what_a_cow_takes_and_the_farms_that_differ(house):
    slow = make_farm(house.business, "High Croft", by=house.owner)
    make_past(house, house.farm, 30, pace=9)
    make_past(house, slow, 30, pace=14)
    learn_visit_lengths(business=house.business, at=NOON)
    story = lengths_story(house.business)
    cow = story.figures[0]
    assert cow.began_from == 7
    assert 9 < cow.minutes < 14
    assert cow.give_or_take > 0
    assert [farm.who for farm in story.slowest] == ["High Croft"]
    assert [farm.who for farm in story.quickest] == ["Low Croft"]
    assert story.slowest[0].minutes > 15
    assert story.quickest[0].less > 15
    assert [van.who for van in story.vans] == ["Van 1"]
    assert story.row.visits == story.finished == 60
    assert 0 <= story.kept_percent <= 100
