"""Infectious, claw-horn and other lesions, and which lesion counts in which figure.

Method: every code of the atlas is in one family by its group (visits.domain.lesions). Heel horn erosion is counted
as infectious by default and can be moved, because published groupings differ (trade-facts D5). A code counts in its
parent as well: a sole ulcer is an ulcer. Digital dermatitis noted as M0 is healthy skin and counts nowhere.
Source of the grouping: Heringstad et al. 2018, J Dairy Sci 101:4801 (dermatitis and heel erosion apart from sole and
white line lesions); the atlas's own list from memory.

Must not be shown as a diagnosis: a family is a way of counting what was seen at the trim.
"""

from collections.abc import Iterable
from enum import StrEnum

from visits.domain.herd.facts import CowSeen, FootSeen, LesionSeen
from visits.domain.lesion_names import family_of
from visits.domain.lesions import LESIONS, DDStage, LesionCode, LesionGroup


class LesionFamily(StrEnum):
    """The three families of the herd's figures."""

    INFECTIOUS = "infectious"
    CLAW_HORN = "claw_horn"
    OTHER = "other"

    @property
    def label(self) -> str:
        return _FAMILY_LABELS[self]


_FAMILY_LABELS = {
    LesionFamily.INFECTIOUS: "infectious lesions",
    LesionFamily.CLAW_HORN: "claw-horn lesions",
    LesionFamily.OTHER: "claw shape, swelling and growths",
}
_FAMILY_OF_GROUP = {
    LesionGroup.INFECTIOUS: LesionFamily.INFECTIOUS,
    LesionGroup.CLAW_HORN: LesionFamily.CLAW_HORN,
}

What = LesionCode | LesionFamily | None
"""What a figure counts: one lesion (with its kinds), a family, or None for any lesion."""

HEEL_EROSION_IS = LesionFamily.INFECTIOUS


def lesion_family(code: LesionCode, heel_erosion: LesionFamily = HEEL_EROSION_IS) -> LesionFamily:
    """The family a lesion is counted in; `heel_erosion` is where the business counts heel horn erosion."""
    if code is LesionCode.HHE:
        return heel_erosion
    return _FAMILY_OF_GROUP.get(LESIONS[code].group, LesionFamily.OTHER)


def counts_as(code: LesionCode, what: What, heel_erosion: LesionFamily = HEEL_EROSION_IS) -> bool:
    """Whether a lesion of this code counts in a figure of `what`."""
    if what is None:
        return True
    if isinstance(what, LesionFamily):
        return lesion_family(code, heel_erosion) is what
    return what in (code, family_of(code))


def what_label(what: What) -> str:
    """The words for it, e.g. "sole ulcer", "infectious lesions", "any lesion"."""
    return "any lesion" if what is None else what.label


def is_lesion(seen: LesionSeen) -> bool:
    """False for digital dermatitis noted as M0, which is healthy skin."""
    return seen.dd_stage is not DDStage.M0


def lesions_on_foot(foot: FootSeen) -> tuple[LesionSeen, ...]:
    if not foot.lesions:
        return ()
    return tuple(seen for seen in foot.lesions if is_lesion(seen))


def lesions_on(cow: CowSeen) -> frozenset[LesionCode]:
    """Every lesion code seen on her that day, each once."""
    return frozenset(seen.lesion for foot in cow.feet if foot.lesions for seen in lesions_on_foot(foot))


def has_any(codes: Iterable[LesionCode], what: What, heel_erosion: LesionFamily = HEEL_EROSION_IS) -> bool:
    """Whether one of the codes counts as `what`."""
    return any(counts_as(code, what, heel_erosion) for code in codes)
