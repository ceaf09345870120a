import pytest

from visits.documents.herd.stairs import stairs


def test_it_stays_level_until_the_next_step_and_on_to_the_end():
    assert stairs([(0, 10), (2, 7), (5, 8)], 9) == (*((0, 10), (2, 10), (2, 7)), *((5, 7), (5, 8), (9, 8)))


def test_one_point_is_a_level_line():
    assert stairs([(0, 10)], 4) == ((0, 10), (4, 10))


def test_without_a_point_there_is_no_line():
    with pytest.raises(IndexError):
        stairs([], 4)
