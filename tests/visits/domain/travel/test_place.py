import pytest

from visits.domain.travel.place import Place, point_of


def test_a_place_is_known_by_where_it_is_not_by_what_it_is_called():
    assert Place("farm-1", 54.21, -2.31).key == Place("van-9", 54.21, -2.31).key == "54.21000,-2.31000"


@pytest.mark.parametrize(("moved", "is_same"), [(0.000004, True), (0.00001, False), (-0.00001, False)])
def test_a_place_that_moves_by_a_metre_is_another(moved, is_same):
    assert (Place("f", 54.21 + moved, -2.31).key == Place("f", 54.21, -2.31).key) is is_same


def test_either_zero_is_the_same_place():
    assert Place("f", -0.000001, 0.0).key == Place("f", 0.000001, -0.0).key == "0.00000,0.00000"


def test_a_key_leads_back_to_the_point_and_fits_its_column():
    furthest = Place("f", -89.99999, -179.99999)
    assert point_of(furthest.key) == furthest.point
    assert len(furthest.key) <= 24
