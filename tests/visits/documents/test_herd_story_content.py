import pytest

from tests.visits.documents.herd_pictures import NOTHING, SOMETHING
from visits.documents.herd_story_content import SoleHeat, ZoneCount
from visits.domain.feet import Claw, Foot


@pytest.mark.parametrize("content", NOTHING)
def test_what_rests_on_nothing_is_empty(content):
    assert content.is_empty


@pytest.mark.parametrize("content", SOMETHING)
def test_what_rests_on_a_figure_is_not(content):
    assert not content.is_empty


def test_a_place_without_a_case_is_still_nothing():
    assert SoleHeat((ZoneCount(Foot.LEFT_HIND, Claw.LATERAL, 4, 0),)).is_empty
