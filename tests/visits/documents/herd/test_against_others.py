import pytest

from tests.visits.documents.herd_pictures import AGAINST, AGAINST_LONG, NOTHING
from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Polygon, Text
from visits.documents.herd.against_others import against_others


def words_of(drawing):
    return [shape.words for shape in drawing.shapes if isinstance(shape, Text)]


def test_this_herd_is_a_dot_print_a_diamond_and_other_herds_one_bar():
    drawing = against_others(AGAINST, 86)
    dots = [s for s in drawing.shapes if isinstance(s, Circle)]
    bars = [s for s in drawing.shapes if isinstance(s, Polygon) and s.fill is Tint.GROUND]
    diamonds = [s for s in drawing.shapes if isinstance(s, Polygon) and s.fill is Tint.PAPER]
    assert [len(shapes) for shapes in (dots, bars, diamonds)] == [2, 2, 2], (
        "each once in the plot, once in the key"
    )
    assert words_of(drawing)[-3:] == ["this herd", "other herds, as a range", "published"]


def test_other_herds_are_told_as_a_range_only():
    drawing = against_others(AGAINST, 86)
    assert "4 to 15" in words_of(drawing)
    assert "9" not in words_of(drawing)
    assert "11 other herds of Skelderdale Foot Trimming 4 to 15" in drawing.description


def test_the_bar_reaches_from_the_lowest_to_the_highest_herd_on_the_scale_of_the_dot():
    drawing = against_others(AGAINST, 86)
    dot = min((s for s in drawing.shapes if isinstance(s, Circle)), key=lambda s: s.centre[1])
    bar = min(
        (s for s in drawing.shapes if isinstance(s, Polygon) and s.fill is Tint.GROUND),
        key=lambda s: s.points[0][1],
    )
    left, right = bar.points[0][0], bar.points[1][0]
    assert left < dot.centre[0] < right
    assert (dot.centre[0] - left) / (right - left) == pytest.approx((12 - 4) / (15 - 4))


def test_a_figure_that_rests_on_too_little_is_words_not_a_mark():
    assert "too few to tell" in words_of(against_others(AGAINST, 86))


def test_a_long_source_takes_two_lines_and_is_cut_before_the_figure():
    words = words_of(against_others(AGAINST_LONG, 86))
    assert "100 (99 to 100)" in words
    assert sum(line.startswith("cows with") or line.endswith("…") for line in words) >= 3


def test_without_a_figure_there_is_nothing_to_draw():
    with pytest.raises(ValueError, match="nothing"):
        against_others(NOTHING[5], 86)
