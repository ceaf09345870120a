"""How the cost fell, in few points."""

from visits.domain.planning.cost_history import MOST_POINTS, falling


def test_only_what_is_lower_than_before_is_a_point_and_the_last_instant_ends_the_line():
    told = [(0.1, 900.0), (0.5, 900.0), (1.0, 850.0), (2.0, 880.0), (3.0, 850.0)]
    assert falling(told) == [[0.1, 900.0], [1.0, 850.0], [3.0, 850.0]]


def test_nothing_told_is_no_line():
    assert falling([]) == []


def test_one_word_is_one_point():
    assert falling([(0.2, 5.0)]) == [[0.2, 5.0]]


def test_a_line_told_in_parts_is_the_line_told_at_once():
    told = [(n / 10, 1000.0 - n * (n % 3)) for n in range(60)]
    parts = falling([*falling(told[:25]), *told[25:]])
    assert [cost for _, cost in parts if cost] == sorted((cost for _, cost in parts), reverse=True)
    assert (parts[0], parts[-1]) == (falling(told)[0], falling(told)[-1])


def test_a_long_search_is_still_a_short_row_from_its_first_to_its_last_point():
    told = [(float(n), 10_000.0 - n) for n in range(1000)]
    points: list[list[float]] = []
    for word in told:
        points = falling([*points, word])
    assert len(points) <= MOST_POINTS
    assert (points[0], points[-1]) == ([0.0, 10_000.0], [999.0, 9001.0])
