"""The map of the sole on paper is the map on the phone."""

import json
import re
from pathlib import Path

import pytest

from visits.documents.herd import sole_cells
from visits.documents.herd.sole_cells import cells_of, side_of
from visits.domain.feet import ZONE_NAMES, Claw, Foot

SCRIPT = (Path(__file__).parents[4] / "visits/static/visits/crush/sole_map.js").read_text()


def middles_of(name):
    body = re.search(rf"const {name} = {{(.*?)}};", SCRIPT, re.DOTALL).group(1)
    found = re.findall(r"(\d+): \[([\d.]+), ([\d.]+)\]", body)
    return {int(zone): (float(x), float(y)) for zone, x, y in found}


def test_the_middles_are_those_of_the_phone():
    assert middles_of("ON_CLAW") == sole_cells.ON_CLAW
    assert middles_of("ON_SKIN") == sole_cells.ON_SKIN


def test_the_outline_of_the_claw_is_that_of_the_phone():
    body = re.search(r"const CLAW_EDGE = (\[.*?\n\]);", SCRIPT, re.DOTALL).group(1)
    points = json.loads(re.sub(r",\s*\]$", "]", body))
    assert [tuple(point) for point in points] == list(sole_cells.CLAW_EDGE)


@pytest.mark.parametrize("foot", Foot)
def test_every_place_of_both_claws_and_the_skin_has_one_cell_about_its_middle(foot):
    places = [(cell.claw, cell.zone) for cell in cells_of(foot)]
    assert len(places) == len(set(places)) == 2 * 10 + 3
    assert {zone for _, zone in places} == set(ZONE_NAMES)
    for cell in cells_of(foot):
        xs, ys = zip(*cell.corners, strict=True)
        assert min(xs) < cell.middle[0] < max(xs)
        assert min(ys) < cell.middle[1] < max(ys)


def area(corners):
    pairs = zip(corners, (*corners[1:], corners[0]), strict=True)
    return abs(sum(x * v - u * y for (x, y), (u, v) in pairs)) / 2


def test_the_cells_of_a_claw_fill_it_without_lying_over_each_other():
    cells = [cell.corners for cell in cells_of(Foot.LEFT_HIND) if cell.claw is Claw.LATERAL]
    assert sum(map(area, cells)) == pytest.approx(area(sole_cells.CLAW_EDGE), rel=1e-3)


@pytest.mark.parametrize(
    ("foot", "side"),
    [(Foot.RIGHT_HIND, -1), (Foot.RIGHT_FORE, -1), (Foot.LEFT_HIND, 1), (Foot.LEFT_FORE, 1)],
)
def test_the_outer_claw_is_on_its_side_seen_from_below(foot, side):
    assert side_of(foot, Claw.LATERAL) == side
    assert side_of(foot, Claw.MEDIAL) == -side
    assert side_of(foot, Claw.SKIN) == 0
    assert all(cell.middle[0] * side > 0 for cell in cells_of(foot) if cell.claw is Claw.LATERAL)
