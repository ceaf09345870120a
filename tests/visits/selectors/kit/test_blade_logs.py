from datetime import timedelta

from tests.factories import NOON, TUESDAY_TEN, make_blade, make_house, under_way
from tests.visits.worked_blades import cut, long_used, say
from visits.domain.kit.blade_kinds import BladeKind, BladeState, SharpenMethod
from visits.domain.kit.edge_lives import EdgeEnd
from visits.models import BladeEvent
from visits.selectors.kit.blade_logs import KEPT_DAYS, blade_logs

LATER = TUESDAY_TEN + timedelta(days=1)


def edges(house, now=LATER):
    """(cows, end) of each edge by the name of the blade."""
    logs = blade_logs(house.scope, now)
    names = {blade.pk: blade.name for blade in logs.blades}
    return {names[pk]: [(edge.cows, edge.end) for edge in found] for pk, found in logs.edges.items()}


def test_cows_are_counted_on_the_blade_in_hand_and_a_check_on_none(house):
    red, blue = make_blade(house.van, "Red"), make_blade(house.van, "Blue")
    visit = under_way(house.farm, house.van)
    say(visit, TUESDAY_TEN, in_hand=red)
    cut(house, visit, 5, 10)
    say(visit, TUESDAY_TEN + timedelta(minutes=12), in_hand=blue, went_dull=red)
    cut(house, visit, 15)
    cut(house, visit, 20, kind="check")
    make_blade(make_house("Other").van, "Theirs")
    assert edges(house) == {"Red": [(2, EdgeEnd.WENT_DULL)], "Blue": [(1, EdgeEnd.IN_USE)]}


def test_sharpenings_say_how_edges_ended_and_what_was_counted_by_hand(house):
    blade = long_used(house, lasted=(18, 20))
    logs = blade_logs(house.scope, LATER)
    first, second, last = logs.edges[blade.pk]
    assert [(edge.cows, edge.method) for edge in (first, second)] == [(18, None), (20, SharpenMethod.BELT)]
    assert not last.is_over
    assert logs.lives(25).of(blade.pk, BladeKind.HOOF_KNIFE, SharpenMethod.BELT).is_practice


def test_what_was_used_before_it_was_put_on_the_list_is_not_whole(house):
    for name, state in (("New", BladeState.BOUGHT), ("Old", BladeState.IN_USE)):
        blade = make_blade(house.van, name)
        BladeEvent.objects.create(business=house.business, blade=blade, state=state.value, at=NOON)
    logs = blade_logs(house.scope, LATER)
    assert [logs.edges[blade.pk][0].is_whole for blade in logs.blades] == [True, False]


def test_what_lies_further_back_than_is_kept_is_left_out(house):
    long_used(house, lasted=(18, 20))
    (found,) = edges(house, LATER + timedelta(days=KEPT_DAYS)).values()
    assert found == [(0, EdgeEnd.IN_USE)]
