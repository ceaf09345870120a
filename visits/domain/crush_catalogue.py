"""What the phone at the crush must know of the trade: lesions, zones, stages, scales, words and cautions.

Everything is JSON-ready and the same for every visit; the sources stand in the modules it is drawn from.
"""

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.cautions import (
    ALONE,
    BEFORE_THE_FIRST_COW,
    BELLY_BAND,
    BLADE_BROKEN,
    BLOOD,
    DISC_BROKEN,
    FOR_THE_FARM,
    GLUE,
    GRINDER,
    HEALTH,
    LATE_PREGNANT,
    MEDICINES,
    TOE,
)
from visits.domain.feet import FEET_IN_ORDER, SKIN_ZONES, ZONE_NAMES, Claw, ZoneMap
from visits.domain.lesions import LESIONS, DDStage, Lesion, LesionGroup
from visits.domain.mobility import MobilityScale

SIGN_LABELS = {
    "has_pain": "pain to the hoof testers",
    "has_swelling": "swelling",
    "swelling_above_dewclaw": "swelling above the dew claws",
    "has_bad_smell": "bad smell",
    "drew_blood": "blood drawn",
    "sensitive_tissue": "sensitive tissue open",
    "deep_infection": "looks infected deep inside",
    "no_better_at_recheck": "no better at this re-check",
}
"""The signs of `crush_entry.SIGNS` in the words of the trade."""


def crush_catalogue() -> dict[str, object]:
    """The parts of the crush papers that no business and no visit changes."""
    return {
        "cautions": _cautions(),
        "lesions": [_lesion(lesion) for lesion in LESIONS.values()],
        "group_labels": {group.value: group.label for group in LesionGroup},
        "zones": {
            "map": ZoneMap.ILC.value,
            "names": {str(number): name for number, name in ZONE_NAMES.items()},
            "skin": sorted(SKIN_ZONES),
        },
        "stages": [
            {"code": stage.value, "name": stage.label, "active": stage.is_active} for stage in DDStage
        ],
        "scales": [_scale(scale) for scale in MobilityScale],
        "labels": {
            "actions": {kind.value: kind.label for kind in ActionKind},
            "blocks": {kind.value: kind.label for kind in BlockKind},
            "feet": {foot.value: foot.label for foot in FEET_IN_ORDER},
            "claws": {claw.value: claw.label for claw in Claw},
            "signs": dict(SIGN_LABELS),
        },
    }


def _cautions() -> dict[str, object]:
    return {
        "before": list(BEFORE_THE_FIRST_COW),
        "belly_band": BELLY_BAND,
        "blood": BLOOD,
        "grinder": GRINDER,
        "alone": ALONE,
        "glue": GLUE,
        "medicines": MEDICINES,
        "health": HEALTH,
        "toe": TOE,
        "late_pregnant": LATE_PREGNANT,
        "blade_broken": BLADE_BROKEN,
        "disc_broken": DISC_BROKEN,
        "for_the_farm": list(FOR_THE_FARM),
    }


def _lesion(lesion: Lesion) -> dict[str, object]:
    return {
        "code": lesion.code.value,
        "name": lesion.name,
        "group": lesion.group.value,
        "meaning": lesion.meaning,
        "zones": sorted(lesion.zones),
        "alarm": lesion.alarm,
        "on_skin": lesion.on_skin,
        "parent": lesion.parent.value if lesion.parent else None,
    }


def _scale(scale: MobilityScale) -> dict[str, object]:
    return {
        "id": scale.value,
        "label": scale.label,
        "scores": list(scale.scores),
        "lame_from": scale.lame_from,
        "very_lame_from": scale.very_lame_from,
    }
