from tests.factories import NOON, TUESDAY_TEN, confirmed, make_house, planned, wanted
from tests.visits.past_visits import make_past
from visits.models import Visit
from visits.services.learn_visit_lengths import learn_visit_lengths
from visits.services.tell_lengths_anew import tell_lengths_anew


def minutes_of(visit):
    return Visit.objects.within(visit.scope).get(pk=visit.pk).expected_minutes


def test_wanted_visits_get_the_learned_length_and_those_with_an_hour_keep_theirs(house):
    loose = wanted(house.farm)
    held = [planned(house.farm, house.van), confirmed(house.farm, house.van, TUESDAY_TEN.replace(day=4))]
    before = [minutes_of(visit) for visit in held]
    make_past(house, house.farm, 40, pace=14)
    learn_visit_lengths(business=house.business, at=NOON)
    assert tell_lengths_anew(scope=house.scope) == 1
    assert minutes_of(loose) > loose.expected_minutes + 40
    assert [minutes_of(visit) for visit in held] == before


def test_a_second_time_nothing_is_left_to_tell(house):
    wanted(house.farm)
    make_past(house, house.farm)
    learn_visit_lengths(business=house.business, at=NOON)
    tell_lengths_anew(scope=house.scope)
    assert tell_lengths_anew(scope=house.scope) == 0


def test_visits_of_another_business_are_left_alone(house):
    other = make_house("Elm & Oak")
    theirs = wanted(other.farm)
    make_past(house, house.farm)
    learn_visit_lengths(business=house.business, at=NOON)
    tell_lengths_anew(scope=house.scope)
    assert minutes_of(theirs) == theirs.expected_minutes
