import pytest

from trimops.paper.drawing import Circle, Text
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.key import LINE, KeyItem, key
from visits.documents.herd.marks import WORDS


def item(words):
    return KeyItem(lambda at: [Circle(at, 1)], words)


def places_of(shapes):
    return [(shape.words, shape.at) for shape in shapes if isinstance(shape, Text)]


def test_items_stand_side_by_side_as_long_as_they_fit():
    shapes, end = key([item("whole herd"), item("picked cows")], 10, 86)
    (_, (x, y)), (_, (further, same)) = places_of(shapes)
    assert further > x + width_of("whole herd", BODY, WORDS)
    assert same == y
    assert end == pytest.approx(10 + LINE)


def test_an_item_without_room_begins_a_new_line():
    shapes, end = key([item("a long word of a key that fills"), item("another that is as long")], 10, 86)
    (_, (x, y)), (_, (below, lower)) = places_of(shapes)
    assert below == x
    assert lower == pytest.approx(y + LINE)
    assert end == pytest.approx(10 + 2 * LINE)


def test_words_longer_than_the_sheet_are_cut():
    ((words, _),) = places_of(key([item("endless " * 20)], 0, 86)[0])
    assert words.endswith("…")


def test_a_key_of_nothing_takes_no_room():
    assert key([], 10, 86) == ([], 10)
