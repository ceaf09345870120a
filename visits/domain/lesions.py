"""What may be seen on a foot: codes, names and groups of the claw health atlas of ICAR.

Provenance: Egger-Danner et al., ICAR Claw Health Atlas (2015; 2nd ed. 2020). The list of codes is **from
memory** (the atlas itself could not be opened; SH, SU, WL, DD, ID and HHE were seen in print). Definitions in
the help texts are our own. Groups as trade-facts 1.2 and D5: heel horn erosion counts as infectious by
default. Which lesions are always painful is from memory. Letters and zones of the International Lameness
Committee: trade-facts 1.3. Stages of digital dermatitis: Doepfer 1997 and Berry 2012, table read in Vet Res
2020, 10.1186/s13567-020-00750-8.

These are observations at the trim, never a diagnosis: that is the vet's.
"""

from dataclasses import dataclass
from enum import StrEnum


class LesionGroup(StrEnum):
    """Which family a lesion is counted in."""

    INFECTIOUS = "infectious"
    CLAW_HORN = "claw_horn"
    SHAPE = "shape"
    SOFT_TISSUE = "soft_tissue"
    SKIN = "skin"

    @property
    def label(self) -> str:
        return self.value.replace("_", " ").capitalize()


class LesionCode(StrEnum):
    """Codes of the atlas."""

    AC = "AC"
    CD = "CD"
    CC = "CC"
    SC = "SC"
    DD = "DD"
    ID = "ID"
    IP = "IP"
    HHE = "HHE"
    IH = "IH"
    SW = "SW"
    DS = "DS"
    HF = "HF"
    HFA = "HFA"
    HFH = "HFH"
    HFV = "HFV"
    SH = "SH"
    SHD = "SHD"
    SHC = "SHC"
    U = "U"
    SU = "SU"
    BU = "BU"
    TU = "TU"
    TN = "TN"
    TS = "TS"
    WL = "WL"
    WLF = "WLF"
    WLA = "WLA"

    @property
    def label(self) -> str:
        """The name in words, e.g. "sole ulcer"."""
        return LESIONS[self].name


class DDStage(StrEnum):
    """Stages of digital dermatitis."""

    M0 = "M0"
    M1 = "M1"
    M2 = "M2"
    M3 = "M3"
    M4 = "M4"
    M4_1 = "M4.1"

    @property
    def label(self) -> str:
        return _STAGE_LABELS[self]

    @property
    def is_active(self) -> bool:
        """M1, M2 and M4.1 carry a live sore."""
        return self in (DDStage.M1, DDStage.M2, DDStage.M4_1)


@dataclass(frozen=True)
class Lesion:
    """One entry of the catalogue.

    `zones` are the usual places on the ILC map (empty: none usual, e.g. a misshapen claw). `on_skin`: seen on
    skin, so it has no claw. `alarm`: always painful. `parent` is the code it is a kind of.
    """

    code: LesionCode
    name: str
    group: LesionGroup
    meaning: str
    parent: LesionCode | None = None
    zones: frozenset[int] = frozenset()
    alarm: bool = False
    on_skin: bool = False


def _lesion(
    code: str,
    name: str,
    group: LesionGroup,
    meaning: str,
    zones: str = "",
    traits: str = "",
    parent: str = "",
) -> Lesion:
    return Lesion(
        code=LesionCode(code),
        name=name,
        group=group,
        meaning=meaning,
        parent=LesionCode(parent) if parent else None,
        zones=frozenset(int(zone) for zone in zones.split()),
        alarm="alarm" in traits,
        on_skin="skin" in traits,
    )


_HORN, _SHAPE, _INFECTIOUS = LesionGroup.CLAW_HORN, LesionGroup.SHAPE, LesionGroup.INFECTIOUS
_SOFT, _SKIN = LesionGroup.SOFT_TISSUE, LesionGroup.SKIN

_ALL = (
    _lesion("AC", "asymmetric claws", _SHAPE, "outer and inner claw differ and no trim levels them"),
    _lesion("CD", "concave dorsal wall", _SHAPE, "front wall is dished"),
    _lesion("CC", "corkscrew claw", _SHAPE, "the claw twists, its front edge is not straight"),
    _lesion("SC", "scissor claws", _SHAPE, "toe tips cross"),
    _lesion("DD", "digital dermatitis", _INFECTIOUS, "raw or warty skin, mostly behind", "9 10", "skin"),
    _lesion("ID", "interdigital dermatitis", _INFECTIOUS, "sore, greasy skin between the claws", "0", "skin"),
    _lesion("IP", "foul", _INFECTIOUS, "even, painful swelling with a bad smell", "0 9", "skin alarm"),
    _lesion("HHE", "heel horn erosion", _INFECTIOUS, "pits or grooves in the heel horn", "6"),
    _lesion("IH", "growth between the claws", _SKIN, "firm growth of skin between the claws", "0", "skin"),
    _lesion("SW", "swelling above the horn", _SOFT, "swollen coronet or bulb", "9", "skin alarm"),
    _lesion("DS", "double sole", _HORN, "a second sole grown under the first", "4 5 6"),
    _lesion("HF", "horn crack", _HORN, "crack in the wall", "7 8 11 12"),
    _lesion("HFA", "crack, inside wall", _HORN, "crack in the wall facing the cleft", "11 12", "", "HF"),
    _lesion("HFH", "crack, across", _HORN, "crack across the wall", "7 8", "", "HF"),
    _lesion("HFV", "crack, upright", _HORN, "crack down the wall", "7 8", "", "HF"),
    _lesion("SH", "sole bruising", _HORN, "red or yellow staining of the sole horn", "4 5 6"),
    _lesion("SHD", "sole bruising, spread", _HORN, "staining spread over the sole", "4 5 6", "", "SH"),
    _lesion("SHC", "sole bruising, one spot", _HORN, "staining with a clear edge", "4 5 6", "", "SH"),
    _lesion("U", "ulcer", _HORN, "hole through the horn, quick in sight", "1 4 5 6", "alarm"),
    _lesion("SU", "sole ulcer", _HORN, "hole through the sole at the usual spot", "4", "alarm", "U"),
    _lesion("BU", "bulb ulcer", _HORN, "hole through the horn of the heel bulb", "6", "alarm", "U"),
    _lesion("TU", "toe ulcer", _HORN, "hole through the sole at the toe", "1 5", "alarm", "U"),
    _lesion("TN", "toe necrosis", _HORN, "dead, stinking toe, bone may be touched", "1", "alarm"),
    _lesion("TS", "thin sole", _HORN, "sole gives under the thumb", "4 5"),
    _lesion("WL", "white line disease", _HORN, "white line open or stained", "1 2 3"),
    _lesion("WLF", "white line crack", _HORN, "white line open, no pus", "1 2 3", "", "WL"),
    _lesion("WLA", "white line abscess", _HORN, "pus under the wall or sole", "1 2 3", "alarm", "WL"),
)

LESIONS: dict[LesionCode, Lesion] = {lesion.code: lesion for lesion in _ALL}

_STAGE_LABELS = {
    DDStage.M0: "healthy skin",
    DDStage.M1: "early, under 2 cm",
    DDStage.M2: "raw sore, over 2 cm",
    DDStage.M3: "healing under a scab",
    DDStage.M4: "old, thickened or warty",
    DDStage.M4_1: "old, with a small raw spot",
}
