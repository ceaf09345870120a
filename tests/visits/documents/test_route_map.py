import math
from itertools import pairwise

import pytest

from tests.visits.documents.drawing_checks import stray_shapes
from tests.visits.documents.map_places import ONE, TWO, valley
from trimops.paper.drawing import Circle, Line, Polygon, Text
from visits.documents.route_map import route_map
from visits.documents.route_map_content import MapPlace, MapRoute, RouteMap


def rings_of(drawing):
    return [shape for shape in drawing.shapes if isinstance(shape, Circle) and shape.radius > 2]


@pytest.mark.parametrize("width", [80, 87, 160, 250])
@pytest.mark.parametrize("content", [ONE, TWO, RouteMap("none", ()), RouteMap("one", valley()[:1])])
def test_nothing_runs_off_the_sheet(content, width):
    assert stray_shapes(route_map(content, width, 100)) == []


def test_farms_of_the_route_wear_rings_with_their_numbers_and_others_are_small():
    drawing = route_map(ONE)
    assert len(rings_of(drawing)) == 4
    assert len([s for s in drawing.shapes if isinstance(s, Circle) and s.radius < 1]) == 23
    inner = {s.words for s in drawing.shapes if isinstance(s, Text) and s.anchor == "middle"}
    assert {"1", "2", "3", "4"} <= inner


def test_legs_run_from_stop_to_stop_with_an_arrow():
    drawing = route_map(ONE)
    legs = [s for s in drawing.shapes if isinstance(s, Line) and s.pen.width == 0.45]
    assert len(legs) == 5
    assert all(leg.points[1] == following.points[0] for leg, following in pairwise(legs))
    assert legs[0].points[0] == legs[-1].points[1]
    heads = [s for s in drawing.shapes if isinstance(s, Polygon) and len(s.points) == 3]
    assert len(heads) >= sum(math.dist(*leg.points) > 12 for leg in legs)


def test_two_routes_are_told_apart_by_their_dashes():
    dashes = {s.pen.dashes for s in route_map(TWO).shapes if isinstance(s, Line) and s.pen.width == 0.45}
    assert len(dashes) == 2


def test_two_stops_at_one_place_are_no_leg():
    places = (MapPlace("a", "A", 54, -2), MapPlace("b", "B", 54, -2))
    content = RouteMap("t", places, (MapRoute("Ann", ("a", "b")),))
    assert [s for s in route_map(content).shapes if isinstance(s, Line) and s.pen.width == 0.45] == []


def test_who_cannot_see_it_is_told_the_order_and_the_scale():
    told = route_map(ONE).description
    assert told.startswith("1 High Thornbeck; 2 Gwern-y-Ŵyl & Sons; 3 Low Moss; 4 Skelder Grange.")
    assert "North is up; the scale bar is 10 km" in told
