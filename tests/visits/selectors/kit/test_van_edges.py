from datetime import timedelta

from tests.factories import TUESDAY_TEN, make_blade
from tests.visits.worked_blades import long_used
from visits.domain.kit.blade_kinds import SharpenMethod
from visits.models import BusinessFigures, Sharpening
from visits.selectors.kit.van_edges import known_edges

LATER = TUESDAY_TEN + timedelta(days=1)


def test_an_edge_is_counted_on_by_what_such_edges_have_lasted(house):
    blade = long_used(house)
    known = known_edges(house.scope, LATER)
    on = known.on[blade.pk]
    assert (on.edge.method, on.edge.cows, on.life.is_practice) == (SharpenMethod.BELT, 0, False)
    assert on.counted_on == on.outlook.sure
    assert 17 <= on.counted_on <= 20
    assert on.outlook.low <= on.outlook.middle <= on.outlook.high <= 33
    assert not on.now().is_dull


def test_with_nothing_to_learn_from_the_businesss_own_figures_stand_in(house):
    make_blade(house.van, "Red")
    BusinessFigures.objects.create(business=house.business, kit={"cows_per_edge": 14, "dull_percent": 5})
    known = known_edges(house.scope, LATER)
    (on,) = known.of_van(house.van.pk)
    assert (on.life.is_practice, on.counted_on, known.limit) == (True, 14, 0.05)


def test_what_is_ground_tonight_is_ground_as_that_blade_is_at_home(house):
    blade = long_used(house)
    away = SharpenMethod.SENT_AWAY.value
    Sharpening.objects.create(business=house.business, blade=blade, at=TUESDAY_TEN, method=away)
    known = known_edges(house.scope, LATER)
    on = known.on[blade.pk]
    assert on.edge.method is SharpenMethod.SENT_AWAY
    assert on.fresh is known.lives.blades[blade.pk, SharpenMethod.BELT]


def test_blades_lie_with_their_van_or_in_the_store(house):
    spare = make_blade(house.van, "Spare")
    spare.van = None
    spare.save()
    make_blade(house.van, "Red")
    known = known_edges(house.scope, LATER)
    assert [on.blade.name for on in known.of_van(None)] == ["Spare"]
    assert [on.blade.name for on in known.of_van(house.van.pk)] == ["Red"]
