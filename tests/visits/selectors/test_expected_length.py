import pytest

from tests.factories import NOON, make_farm
from tests.visits.past_visits import make_past
from visits.domain.visit_length import LengthFigures, expected_length
from visits.models import LearnedLengths
from visits.selectors.expected_length import expected_at
from visits.selectors.farm_setup import setup_of
from visits.services.learn_visit_lengths import learn_visit_lengths


@pytest.mark.parametrize(("cows", "lame"), [(1, 1), (20, 0), (33, 4)])
def test_without_history_the_planning_figures_are_told_to_the_minute_with_a_span(house, cows, lame):
    told = expected_at(house.farm, head_count=cows, corrective_count=lame)
    rule = expected_length(LengthFigures(), setup_of(house.farm), head_count=cows, corrective_count=lame)
    assert told.minutes == rule.minutes
    assert told.parts == rule.parts
    assert told.low < told.minutes < told.high
    assert (told.visits_here, told.visits_in_all) == (0, 0)


def test_a_farm_never_visited_is_told_by_the_others_with_a_wider_span(house):
    make_past(house, house.farm, 40, pace=12)
    learn_visit_lengths(business=house.business, at=NOON)
    new = make_farm(house.business, "High Croft", by=house.owner)
    known, stranger = (expected_at(farm, head_count=16, corrective_count=0) for farm in (house.farm, new))
    assert (stranger.visits_here, stranger.visits_in_all) == (0, 40)
    assert stranger.high - stranger.low > known.high - known.low


def test_a_rule_of_an_older_form_is_left_aside_until_it_is_learned_anew(house):
    make_past(house, house.farm)
    learn_visit_lengths(business=house.business, at=NOON)
    LearnedLengths.objects.within(house.scope).update(rule={"format": "older"})
    assert not expected_at(house.farm, head_count=4, corrective_count=0).is_learned


def test_spans_are_told_in_fives(house):
    told = expected_at(house.farm, head_count=7, corrective_count=0)
    assert (told.low % 5, told.high % 5) == (0, 0)
