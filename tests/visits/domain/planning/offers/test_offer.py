from visits.domain.planning.offers.offer import Added, Offer, Place, by_weight


def offer(weight, first=0, shift=0):
    return Offer(Place(shift, 0, (0,)), first, first, Added(0, 0, 0.0, weight))


def test_two_changes_add_up():
    assert Added(1, 2, 3.0, 4.0).plus(Added(10, 20, 30.0, 40.0)) == Added(11, 22, 33.0, 44.0)


def test_the_lighter_comes_first_and_of_equals_the_earlier():
    heavy, late, early = offer(2.0), offer(1.0, first=9), offer(1.0000000001, first=3)
    assert sorted([heavy, late, early], key=by_weight) == [early, late, heavy]
