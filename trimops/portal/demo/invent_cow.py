"""One cow at the crush: from what is seen on her feet to the whole entry, by the rules of the trade."""

from collections.abc import Mapping, Sequence
from random import Random

from trimops.portal.demo.chances import happens, one_of
from trimops.portal.demo.demo_files import Rates
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot, sound_partner
from visits.domain.lesion_names import is_always_painful
from visits.domain.lesions import LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.recheck_due import StandingBlock
from visits.domain.trim_refusals import sore_claws

HINDS = (Foot.LEFT_HIND, Foot.RIGHT_HIND)
FORES = (Foot.LEFT_FORE, Foot.RIGHT_FORE)
TRIM_STEPS = (ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL)
ULCERS = frozenset({LesionCode.SU, LesionCode.BU, LesionCode.TU, LesionCode.WLA})
SCORED_SHARE = 0.5

Seen = Mapping[Foot, Sequence[FindingEntry]]


def routine_entry(chance: Random, rates: Rates, seen: Seen, standing: Sequence[StandingBlock]) -> CowEntry:
    """A cow of a routine visit: both hind feet, the fore feet of some, and every foot with something on it."""
    lifted = {*HINDS, *seen, *(block.foot for block in standing)}
    if happens(chance, rates.fore_feet_lifted):
        lifted.update(FORES)
    feet = [_foot(chance, rates, foot, seen.get(foot, ()), standing) for foot in Foot if foot in lifted]
    return _cow(chance, rates, feet)


def recheck_entry(
    chance: Random, rates: Rates, feet: Sequence[Foot], seen: Seen, standing: Sequence[StandingBlock]
) -> CowEntry:
    """A cow looked at again: only the feet in question, cut only where something is still there."""
    return _cow(chance, rates, [_foot(chance, rates, f, seen.get(f, ()), standing, cut=False) for f in feet])


def _foot(
    chance: Random,
    rates: Rates,
    foot: Foot,
    findings: Sequence[FindingEntry],
    standing: Sequence[StandingBlock],
    cut: bool = True,
) -> FootEntry:
    bare = FootEntry(foot, findings=tuple(findings))
    sore = sore_claws(bare)
    actions = [ActionEntry(ActionKind.BLOCK_OFF, block.claw) for block in standing if block.foot is foot]
    if cut or sore:
        actions += [ActionEntry(step) for step in TRIM_STEPS]
    for claw in sorted(sore):
        actions += [ActionEntry(ActionKind.RELIEF, claw), ActionEntry(ActionKind.LOOSE_HORN, claw)]
    actions += _block(chance, rates, bare, sore) + _skin(chance, bare)
    if not actions:
        actions = [ActionEntry(ActionKind.NO_CUT)]
    bad = bool(sore) and any(item.severity == 3 for item in findings)
    return FootEntry(
        foot,
        wall_mm=chance.randint(76, 90) if cut and happens(chance, 0.15) else None,
        has_pain=bool(sore),
        has_swelling=bad and happens(chance, 0.3),
        sensitive_tissue=bad and happens(chance, 0.06),
        swelling_above_dewclaw=bad and happens(chance, 0.03),
        findings=tuple(findings),
        actions=tuple(actions),
    )


def _block(chance: Random, rates: Rates, foot: FootEntry, sore: frozenset[Claw]) -> list[ActionEntry]:
    """A block on the sound partner (T8), where an ulcer or abscess leaves one sound claw to stand on."""
    if len(sore) != 1 or not any(item.lesion in ULCERS for item in foot.findings):
        return []
    partner = sound_partner(next(iter(sore)))
    if partner is None or not happens(chance, rates.block_per_ulcer):
        return []
    return [ActionEntry(ActionKind.BLOCK, partner, BlockKind(one_of(chance, rates.block_kinds)))]


def _skin(chance: Random, foot: FootEntry) -> list[ActionEntry]:
    if not any(item.dd_stage is not None and item.dd_stage.is_active for item in foot.findings):
        return []
    wrap = [ActionEntry(ActionKind.WRAP)] if happens(chance, 0.35) else []
    return [ActionEntry(ActionKind.DRESSING), *wrap]


def _cow(chance: Random, rates: Rates, feet: Sequence[FootEntry]) -> CowEntry:
    """With a mobility score for about half the cows; painful feet make a share of them lame."""
    if not happens(chance, SCORED_SHARE):
        return CowEntry(tuple(feet))
    hurts = any(
        item.severity >= 2 and is_always_painful(item.lesion, item.dd_stage)
        for foot in feet
        for item in foot.findings
    )
    score = chance.choices((0, 1), (0.7, 0.3))[0]
    if hurts and happens(chance, rates.walks_lame * 2):
        score = chance.choices((2, 3), (0.85, 0.15))[0]
    return CowEntry(tuple(feet), MobilityScale.UK, score)
