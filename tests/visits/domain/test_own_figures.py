from dataclasses import dataclass

import pytest

from visits.domain.own_figures import FigureRefused, with_own_figures


@dataclass(frozen=True)
class Figures:
    minutes: float = 5
    cows: float = 9


def test_own_figures_take_the_place_of_the_usual_ones():
    assert with_own_figures(Figures(), {"cows": 12}) == Figures(5, 12)
    assert with_own_figures(Figures(), {}) == Figures()


@pytest.mark.parametrize("own", [{"hours": 1}, {"cows": "12"}, {"cows": True}, {"cows": -1}, {"cows": None}])
def test_a_figure_that_makes_no_sense_is_refused_by_its_name(own):
    with pytest.raises(FigureRefused, match=next(iter(own))):
        with_own_figures(Figures(), own)


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_a_figure_that_is_no_number_at_all_is_refused(value):
    with pytest.raises(FigureRefused, match="cows"):
        with_own_figures(Figures(), {"cows": value})
