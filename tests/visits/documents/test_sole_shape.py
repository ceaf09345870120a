"""The shape against the published map: thirteen numbers, each once, and those of a claw on the claw."""

import pytest

from trimops.paper.moving import corners_of
from visits.documents.sole_shape import CLAW, HEIGHT, SKIN_PLACES, WHITE_LINE, WIDTH, ZONE_PLACES, outline_pen
from visits.domain.feet import SKIN_ZONES, ZONE_NAMES


def is_within(point, corners):
    x, y = point
    inside = False
    for (x0, y0), (x1, y1) in zip(corners, [*corners[1:], corners[0]], strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
            inside = not inside
    return inside


def test_every_zone_of_the_map_has_its_place_once():
    assert sorted([*ZONE_PLACES, *SKIN_PLACES]) == sorted(ZONE_NAMES)
    assert set(SKIN_PLACES) == set(SKIN_ZONES)


@pytest.mark.parametrize("zone", [1, 2, 3, 4, 5, 6])
def test_the_weight_bearing_zones_lie_on_the_sole(zone):
    assert is_within(ZONE_PLACES[zone], corners_of(CLAW))


@pytest.mark.parametrize("zone", [7, 8, 11, 12])
def test_the_walls_are_folded_out_beside_the_sole(zone):
    assert not is_within(ZONE_PLACES[zone], corners_of(CLAW))


def test_outside_walls_lie_outside_and_inside_walls_towards_the_cleft():
    middle = ZONE_PLACES[4][0]
    assert all(ZONE_PLACES[zone][0] > middle for zone in (2, 3, 7, 8))
    assert all(0 < ZONE_PLACES[zone][0] < middle for zone in (11, 12))


def test_the_map_runs_from_toe_to_heel():
    depth = [ZONE_PLACES[zone][1] for zone in (1, 5, 4, 6)]
    assert depth == sorted(depth)


def test_the_white_line_lies_on_the_sole_and_all_within_the_field():
    assert all(is_within((x, y + 0.5), corners_of(CLAW)) for x, y in corners_of(WHITE_LINE)[1:-1])
    assert all(
        abs(x) <= WIDTH / 2 and 0 <= y <= HEIGHT for x, y in [*ZONE_PLACES.values(), *SKIN_PLACES.values()]
    )


def test_there_is_one_line_weight_finer_when_small():
    assert outline_pen(12).width < outline_pen(80).width
