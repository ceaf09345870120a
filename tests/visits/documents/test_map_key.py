import pytest

from tests.visits.documents.map_places import ONE, TWO
from trimops.paper.drawing import Line, Text
from visits.documents.map_key import dashes_of, key_rows, key_shapes, north_arrow, scale_bar
from visits.documents.map_projection import projection_of


def test_the_key_lists_farms_in_the_order_driven():
    assert [(row.number, row.words) for row in key_rows(ONE)][:2] == [
        ("1", "High Thornbeck"),
        ("2", "Gwern-y-Ŵyl & Sons"),
    ]


def test_several_routes_are_named_with_their_dashes():
    heads = [row for row in key_rows(TWO) if row.place is None]
    assert [(row.number, row.words, row.dashes) for row in heads] == [
        ("A", "Ann", ()),
        ("B", "Ben", dashes_of(1)),
    ]
    assert len({dashes_of(order) for order in range(4)}) == 4


@pytest.mark.parametrize("width", [87, 160, 300])
def test_every_farm_of_the_key_is_written_whatever_the_width(width):
    shapes, end = key_shapes(TWO, 100, width)
    texts = [shape for shape in shapes if isinstance(shape, Text)]
    assert len(texts) == 2 * len(key_rows(TWO))
    assert all(100 < text.at[1] < end for text in texts)


def test_the_scale_bar_is_as_long_as_it_says():
    projection = projection_of([(54, -2), (54.2, -2)], (0, 0), (100, 100))
    shapes = scale_bar(projection, (4, 90), 40)
    bar = next(shape for shape in shapes if isinstance(shape, Line))
    words = next(shape.words for shape in shapes if isinstance(shape, Text))
    assert bar.points[1][0] - bar.points[0][0] == pytest.approx(
        float(words.split()[0]) * projection.mm_per_km
    )


def test_the_arrow_points_up_to_its_tip():
    shaft = next(shape for shape in north_arrow((10, 5)) if isinstance(shape, Line))
    assert shaft.points[1][1] < shaft.points[0][1]
