import pytest

from visits.domain.kit.kit_figures import KitFigures
from visits.domain.own_figures import FigureRefused


def test_the_defaults_stand_where_nothing_is_set():
    assert KitFigures.from_overrides({}) == KitFigures()
    assert KitFigures.from_overrides({"service_percent": 99}).service_percent == 99


@pytest.mark.parametrize(
    ("own", "mend"),
    [
        ({"service_percent": 20}, "from 50 to 99.9"),
        ({"service_percent": 100}, "from 50 to 99.9"),
        ({"review_days": 0}, "from 1 to 90"),
        ({"dull_percent": 0}, "from 0.1 to 50"),
        ({"cows_per_edge": 0}, "from 1 to 1000"),
        ({"cows_per_edge": float("inf")}, "must be a number"),
        ({"glue": 3}, "no figure known"),
    ],
)
def test_what_makes_no_sense_is_refused_by_name(own, mend):
    with pytest.raises(FigureRefused, match=mend):
        KitFigures.from_overrides(own)
