import pytest

from tests.bench.planning.bench_published import LARGE, SMALL, Case, missed_bars, orienteering_case


def test_a_gap_is_per_cent_of_the_best_known_and_more_profit_is_better():
    assert Case("f", "n", {}, 200.0).gap(203) == 1.5
    case = orienteering_case("R101.25/2", 155)
    assert case.gap(100 * (332 - 155)) == 0
    assert case.gap(100 * (332 - 124)) == 20


@pytest.mark.parametrize(
    ("gaps", "line"),
    [
        ({SMALL: [0.0, 0.1]}, "Solomon 25: not every"),
        ({LARGE: [0.2, 0.9]}, "Solomon 100: the mean gap is 0.55 %"),
        ({LARGE: [-0.1]}, "Solomon 100: below"),
    ],
)
def test_a_missed_bar_is_told(gaps, line):
    assert missed_bars(gaps)[0].startswith(line)


def test_bars_that_are_met_say_nothing():
    assert missed_bars({SMALL: [0.0], LARGE: [0.0, 1.0], "team orienteering": [-1.0]}) == []
