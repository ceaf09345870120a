"""By which scheme each thing is named to the outside.

No registered scheme holds the codes of the claw health atlas, nor our own keys, so these schemes are our own; they
begin with `x.`, which no registered one does. The scheme of the UK tag is that of the standard's examples.
"""

from collections.abc import Mapping

from farms.domain.ear_tag import read_ear_tag
from visits.domain.ade.herd_out import CowOut, FarmOut
from visits.domain.lesions import LesionCode
from visits.domain.mobility import MobilityScale

OWN = "x.trimops"
CLAW_ATLAS = f"{OWN}.icar-claw-atlas-2020"
UK_TAG = "uk.cts.eartag"

Identifier = Mapping[str, str]


def animal_id(cow: CowOut) -> Identifier:
    """Her official tag if she has one, else our own key of her: a farm's number is not hers alone."""
    if not cow.tag:
        return _own("cow", str(cow.key))
    return {"id": cow.tag, "scheme": _tag_scheme(cow.tag)}


def other_animal_ids(cow: CowOut) -> list[Identifier]:
    """What else she goes by."""
    found = [_own("cow", str(cow.key))] if cow.tag else []
    if cow.electronic_id:
        found.append(_own("iso-11784", cow.electronic_id))
    return found


def location_id(farm: FarmOut) -> Identifier:
    """The farm by our own key: its official holding number is not kept here."""
    return _own("farm", str(farm.key))


def lesion_id(lesion: LesionCode) -> Identifier:
    """The atlas code of what was seen."""
    return {"id": lesion.value, "scheme": CLAW_ATLAS}


def score_sheet_id(scale: MobilityScale) -> Identifier:
    """The score sheet that a mobility score was read on."""
    return _own("mobility-sheet", scale.value)


def _tag_scheme(tag: str) -> str:
    """A tag that can be read as a UK one; any other by its form alone."""
    try:
        return UK_TAG if read_ear_tag(tag).is_uk_numeric else f"{OWN}.official-tag"
    except ValueError:
        return f"{OWN}.official-tag"


def _own(name: str, text: str) -> Identifier:
    return {"id": text, "scheme": f"{OWN}.{name}"}
