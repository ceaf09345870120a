"""Cautions around knives, discs and sharpening. Usual advice in our own words; local rules decide.

Grinder: Head Face Med 2008;4:1 (right disc, replace chipped ones, stop at vibration, guard on, out of its plane,
gloves, goggles and face shield). The wheel that turns away from the user and the blue steel: trimmers' tool articles
(trade-facts 10). The rest: common practice, no source.
"""

from visits.domain.cautions import BLADE_BROKEN, DISC_BROKEN, GRINDER
from visits.domain.kit.blade_kinds import BladeKind

SHARPENING: tuple[str, ...] = (
    "Eyes covered, gloves that cannot be caught, long sleeves away from the wheel; nobody stands in line with it.",
    "The wheel turns away from you: an edge that meets a wheel coming towards you digs in and is thrown.",
    "Keep the steel cool. Where it has turned blue its temper is gone: that part dulls at once and is ground away.",
    "Try the edge on horn or paper, never on a finger; carry knives sheathed.",
)
WASH_FIRST = "Grit dulls an edge sooner than horn: brush or wash the foot first."


def broken_words(kind: BladeKind) -> str:
    """What to do when such a blade is cracked or chipped."""
    return DISC_BROKEN if kind.is_turned else BLADE_BROKEN


def at_work_words(kind: BladeKind) -> str:
    """What to mind while it cuts."""
    return GRINDER if kind.is_turned else WASH_FIRST
