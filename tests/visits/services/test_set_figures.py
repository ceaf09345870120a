import pytest

from tests.factories import make_house
from visits.selectors.business_figures import figures_of
from visits.services.set_figures import FigureMakesNoSense, OwnFigures, set_figures

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


def test_own_figures_are_used_and_the_others_stay_usual(house):
    own = OwnFigures({"functional_cow": 9}, {"block.wood": [20, 25]}, {"kmh": 42})
    set_figures(business=house.business, figures=own)
    figures = figures_of(house.scope)
    assert figures.length.functional_cow == 9
    assert figures.length.pack_up == 15
    assert figures.planning.kmh == 42
    assert next(iter(figures.rechecks.block.values())) == (20, 25)


def test_the_marks_for_the_claw_are_kept_with_their_landmark(house):
    marks = {"shortest_wall_mm": 90, "wall_measured_from": "the coronary band", "feet_lifted": 2}
    set_figures(business=house.business, figures=OwnFigures({}, {}, {}, marks))
    trim = figures_of(house.scope).trim
    assert (trim.shortest_wall_mm, trim.wall_measured_from, trim.feet_lifted) == tuple(marks.values())
    assert trim.toe_angle_from == 45


def test_setting_them_again_replaces_them(house):
    set_figures(business=house.business, figures=OwnFigures({"pack_up": 20}, {}, {}))
    set_figures(business=house.business, figures=OwnFigures({}, {}, {}))
    assert figures_of(house.scope).length.pack_up == 15


@pytest.mark.parametrize(
    "own",
    [
        OwnFigures({"functional_cow": -1}, {}, {}),
        OwnFigures({"no_such_figure": 1}, {}, {}),
        OwnFigures({}, {"block.wood": [30, 20]}, {}),
        OwnFigures({}, {}, {"kmh": "fast"}),
        OwnFigures({}, {}, {}, {"shortest_wall_mm": "long"}),
        OwnFigures({}, {}, {}, {"wall_measured_from": " "}),
    ],
)
def test_a_figure_that_makes_no_sense_keeps_nothing_of_the_lot(house, own):
    set_figures(business=house.business, figures=OwnFigures({"pack_up": 20}, {}, {}))
    with pytest.raises(FigureMakesNoSense):
        set_figures(business=house.business, figures=own)
    assert figures_of(house.scope).length.pack_up == 20
