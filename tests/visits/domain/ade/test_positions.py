"""Outer is lateral on all four feet; the skin is the foot's."""

import pytest

from visits.domain.ade.positions import position_of, position_of_lesion, positions
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import LESIONS, LesionCode


@pytest.mark.parametrize(
    ("foot", "claw", "expected"),
    [
        (Foot.RIGHT_HIND, Claw.LATERAL, "OuterToeRearRight"),
        (Foot.RIGHT_HIND, Claw.MEDIAL, "InnerToeRearRight"),
        (Foot.LEFT_FORE, Claw.LATERAL, "OuterToeFrontLeft"),
        (Foot.LEFT_FORE, Claw.MEDIAL, "InnerToeFrontLeft"),
        (Foot.LEFT_HIND, Claw.SKIN, "LegsRearLeft"),
        (Foot.RIGHT_FORE, None, "LegsFrontRight"),
    ],
)
def test_a_claw_is_named_on_its_foot(foot, claw, expected):
    assert position_of(foot, claw) == expected


def test_every_foot_and_claw_has_a_name_of_its_own():
    assert len({position_of(foot, claw) for foot in Foot for claw in (Claw.LATERAL, Claw.MEDIAL)}) == 8


@pytest.mark.parametrize("lesion", [code for code in LesionCode if LESIONS[code].on_skin])
def test_a_lesion_of_the_skin_is_on_the_foot_whichever_claw_it_was_noted_beside(lesion):
    assert position_of_lesion(lesion, Foot.LEFT_HIND, Claw.LATERAL) == "LegsRearLeft"


def test_a_lesion_of_the_horn_is_on_its_claw():
    assert position_of_lesion(LesionCode.WLA, Foot.LEFT_HIND, Claw.MEDIAL) == "InnerToeRearLeft"


def test_each_place_is_listed_once_in_its_order():
    listed = positions(["LegsRearLeft", "InnerToeRearLeft", "LegsRearLeft"])
    assert listed == [{"position": "LegsRearLeft"}, {"position": "InnerToeRearLeft"}]
