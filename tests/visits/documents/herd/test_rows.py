from trimops.paper.drawing import Line, Text
from visits.documents.herd.axis import Scale
from visits.documents.herd.rows import Field, unit_words, upright_lines


def test_every_tick_has_its_upright_line_and_its_figure_below():
    field = Field(Scale(0, 50, 20, 70), 5, 40)
    shapes = upright_lines(field, (0, 25, 50))
    assert [shape.points for shape in shapes if isinstance(shape, Line)] == [
        ((20, 5), (20, 40)),
        ((45, 5), (45, 40)),
        ((70, 5), (70, 40)),
    ]
    numbers = [shape for shape in shapes if isinstance(shape, Text)]
    assert [shape.words for shape in numbers] == ["0", "25", "50"]
    assert all(shape.at[1] > 40 for shape in numbers)


def test_a_long_unit_takes_two_lines():
    short, end = unit_words("per 100", 86)
    long, further = unit_words("cows with it " * 5, 86)
    assert len(short) == 1
    assert len(long) == 2
    assert further > end
