"""Where on a cow: the exchange's names of feet and claws.

The outer claw is the lateral, the inner the medial one, on fore and hind feet alike; hind is called rear. A claw has
a name of its own only since the eight toe values of 2026 (their file was read before the last review, see fixtures).
What is on the skin between or behind the claws belongs to the foot, never to a toe.
"""

from collections.abc import Iterable, Mapping

from visits.domain.ade.lists import JsonList
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import LESIONS, LesionCode

_PLACES: Mapping[Foot, str] = {
    Foot.LEFT_FORE: "FrontLeft",
    Foot.RIGHT_FORE: "FrontRight",
    Foot.LEFT_HIND: "RearLeft",
    Foot.RIGHT_HIND: "RearRight",
}
_PARTS: Mapping[Claw | None, str] = {
    Claw.LATERAL: "OuterToe",
    Claw.MEDIAL: "InnerToe",
    Claw.SKIN: "Legs",
    None: "Legs",
}


def position_of(foot: Foot, claw: Claw | None) -> str:
    """ "OuterToeRearLeft", or "LegsRearLeft" for the skin and for the foot as a whole."""
    return _PARTS[claw] + _PLACES[foot]


def position_of_lesion(lesion: LesionCode, foot: Foot, claw: Claw) -> str:
    """Where a lesion is; one of the skin is on the foot, whichever claw it was noted beside."""
    return position_of(foot, None if LESIONS[lesion].on_skin else claw)


def positions(names: Iterable[str]) -> JsonList:
    """The list of an event, each place once, in the order given."""
    return [{"position": name} for name in dict.fromkeys(names)]
