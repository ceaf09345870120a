import pytest

from visits.domain.actions import BlockKind
from visits.domain.lesions import LesionCode
from visits.domain.recheck_figures import FigureOutOfRange, RecheckFigures


def test_without_figures_of_its_own_a_business_has_the_usual_ones():
    assert RecheckFigures.from_overrides({}) == RecheckFigures()


def test_a_business_lays_its_own_days_over_the_usual_ones():
    own = RecheckFigures.from_overrides(
        {"block.wood": [14, 21], "lesion.SU": [20, 25], "lame_trim": (7, 10), "overdue_days": 35}
    )
    assert own.block[BlockKind.WOOD] == (14, 21)
    assert own.block[BlockKind.SHOE] == RecheckFigures().block[BlockKind.SHOE]
    assert own.lesion[LesionCode.SU] == (20, 25)
    assert (own.lame_trim, own.overdue_days) == ((7, 10), 35)


@pytest.mark.parametrize(
    ("own", "key"),
    [
        ({"block.wood": [28, 21]}, "block.wood"),
        ({"block.wood": 28}, "block.wood"),
        ({"block.wood": [28]}, "block.wood"),
        ({"lesion.SU": ["a", "b"]}, "lesion.SU"),
        ({"lame_trim": [-1, 2]}, "lame_trim"),
        ({"lame_trim": [0, 999]}, "lame_trim"),
        ({"lame_trim": [True, True]}, "lame_trim"),
        ({"overdue_days": 0}, "overdue_days"),
        ({"overdue_days": "42"}, "overdue_days"),
    ],
)
def test_a_figure_that_makes_no_sense_is_refused_by_its_name(own, key):
    with pytest.raises(FigureOutOfRange, match=key):
        RecheckFigures.from_overrides(own)
