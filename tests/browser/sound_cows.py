"""Cows as trimmers put them down: entries that the server keeps, a different one for each number."""

import random

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import SIGNS, ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import FEET_IN_ORDER, SKIN_ZONES, Claw, Foot, sound_partner
from visits.domain.lesions import LESIONS, DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.trim_refusals import sore_claws

CLAWS = (Claw.LATERAL, Claw.MEDIAL)
STEPS = (ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL)


def sound_entry(seed: int) -> CowEntry:
    """One cow, always the same one for a number."""
    dice = random.Random(seed)
    scale = dice.choice([None, *MobilityScale])
    return CowEntry(
        feet=tuple(_foot(dice, foot) for foot in dice.sample(FEET_IN_ORDER, dice.randrange(5))),
        mobility_scale=scale,
        mobility_score=dice.choice(scale.scores) if scale else None,
        belly_band_minutes=dice.choice([None, 4, 22]),
        crush_seconds=dice.choice([None, 340]),
        note=dice.choice(["", "Kicks"]),
        for_vet=dice.choice(["", "", "", "Thin: look at her whole"]),
    )


def _foot(dice: random.Random, name: Foot) -> FootEntry:
    foot = FootEntry(
        name,
        wall_mm=dice.choice([None, 74, 82]),
        look_again_days=dice.choice([None, None, None, 0, 10]),
        for_vet=dice.choice(["", "", "", "Hot above the horn"]),
        findings=tuple(_finding(dice) for _ in range(dice.choice([0, 0, 1, 1, 2]))),
        **{sign: dice.random() < 0.1 for sign in SIGNS},
    )
    return FootEntry(**{**vars(foot), "actions": tuple(_actions(dice, foot))})


def _finding(dice: random.Random) -> FindingEntry:
    code = dice.choice(list(LesionCode))
    on_skin = LESIONS[code].on_skin
    zones = sorted(SKIN_ZONES) if on_skin else range(1, 9)
    stage = dice.choice([None, *DDStage]) if code is LesionCode.DD else None
    claw = Claw.SKIN if on_skin else dice.choice(CLAWS)
    return FindingEntry(code, claw, dice.choice([None, *zones]), dice.randrange(1, 4), stage)


def _actions(dice: random.Random, foot: FootEntry) -> list[ActionEntry]:
    if dice.random() < 0.15:
        return [ActionEntry(ActionKind.NO_CUT, claw) for claw in CLAWS]
    done = [ActionEntry(step, claw) for claw in CLAWS for step in STEPS if dice.random() < 0.9]
    sore = sore_claws(foot)
    for claw in sorted(sore):
        done += [ActionEntry(kind, claw) for kind in (ActionKind.RELIEF, ActionKind.LOOSE_HORN)]
    if len(sore) == 1 and dice.random() < 0.7:
        done.append(ActionEntry(ActionKind.BLOCK, sound_partner(*sore), dice.choice(list(BlockKind))))
    whole = [ActionKind.WRAP, ActionKind.DRESSING, ActionKind.BLOCK_OFF]
    return done + [ActionEntry(kind) for kind in whole if dice.random() < 0.2]
