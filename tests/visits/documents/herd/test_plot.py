import pytest

from trimops.paper.drawing import Line, Text
from visits.documents.herd.plot import plot


def test_every_tick_has_its_level_line_and_its_figure():
    ground = plot("per 100", (0, 25, 50), 86, 40)
    levels = [shape.points[0][1] for shape in ground.shapes if isinstance(shape, Line)]
    assert levels == [ground.scale.at(tick) for tick in (0, 25, 50)]
    assert [levels[0], levels[-1]] == pytest.approx([ground.foot, ground.top])
    assert [shape.words for shape in ground.shapes if isinstance(shape, Text)] == ["per 100", "0", "25", "50"]


def test_it_begins_to_the_right_of_its_widest_figure():
    assert plot("per 100", (0, 1000), 86, 40).left > plot("per 100", (0, 5), 86, 40).left


def test_a_long_unit_takes_two_lines_and_pushes_the_plot_down():
    short, long = plot("per 100", (0, 5), 86, 40), plot("cows with it " * 5, (0, 5), 86, 40)
    assert long.top > short.top
    assert [long.foot - long.top, short.foot - short.top] == pytest.approx([40, 40])


def test_room_is_kept_over_the_plot_for_signs():
    assert plot("per 100", (0, 5), 86, 40, head=5).top == plot("per 100", (0, 5), 86, 40).top + 5
