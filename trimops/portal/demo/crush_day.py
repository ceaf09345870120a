"""The cows of the one visit that the demo records: three told in full, the others drawn from the rates."""

from datetime import date
from random import Random

from farms.models import Cow
from trimops.portal.demo.demo_files import Rates
from trimops.portal.demo.invent_cow import routine_entry
from trimops.portal.demo.invent_lesions import CowPast, lesions_today
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.recheck_due import StandingBlock
from visits.models import Block, Trim, Visit
from visits.selectors.crush_list import crush_list

COWS = 12
TRIM_STEPS = tuple(ActionEntry(kind) for kind in (ActionKind.LENGTH, ActionKind.BALANCE, ActionKind.MODEL))
CORRECTIVE = (ActionEntry(ActionKind.RELIEF, Claw.LATERAL), ActionEntry(ActionKind.LOOSE_HORN, Claw.LATERAL))


def cows_for(visit: Visit) -> list[Cow]:
    """The cows on the list first, then those that were never trimmed or longest away; heifers only if listed."""
    expected = [line.cow_id for line in crush_list(visit)]
    rows = Cow.objects.within(visit.scope).in_bulk(expected)
    listed = [rows[pk] for pk in expected]
    known = set(expected)
    seen = dict(
        Trim.objects.within(visit.scope)
        .filter(visit__farm_id=visit.farm_id)
        .order_by("recorded_at")
        .values_list("cow_id", "recorded_at")
    )
    herd = Cow.objects.within(visit.scope).on_farm().filter(farm_id=visit.farm_id, entered_on__isnull=False)
    away = sorted(herd, key=lambda cow: (str(seen.get(cow.pk, "")), cow.pk))
    wanted = min(COWS, max(visit.head_count, len(listed)))
    return [*listed, *(cow for cow in away if cow.pk not in known)][:wanted]


def entries_for(visit: Visit, cows: list[Cow], rates: Rates, chance: Random, day: date) -> list[CowEntry]:
    """One entry for each cow; the last three have a block, digital dermatitis, and something for the vet."""
    told = [with_block(), with_dermatitis(), for_the_vet()][-len(cows) :]
    standing = _standing(visit)
    drawn = [_drawn(rates, chance, day, standing.get(cow.pk, [])) for cow in cows[: len(cows) - len(told)]]
    return [*drawn, *told]


def with_block() -> CowEntry:
    """Sole ulcer on the outer claw of the right hind; a wooden block on its sound partner."""
    found = FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 2)
    block = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.WOOD)
    foot = FootEntry(
        Foot.RIGHT_HIND, 82, has_pain=True, findings=(found,), actions=(*TRIM_STEPS, *CORRECTIVE, block)
    )
    return CowEntry((foot, _plain(Foot.LEFT_HIND)), MobilityScale.UK, 2, note="keep her near the parlour")


def with_dermatitis() -> CowEntry:
    """A raw sore behind the left hind, dressed and wrapped."""
    found = FindingEntry(LesionCode.DD, Claw.SKIN, 10, 2, DDStage.M2)
    actions = (*TRIM_STEPS, ActionEntry(ActionKind.DRESSING), ActionEntry(ActionKind.WRAP))
    return CowEntry((FootEntry(Foot.LEFT_HIND, findings=(found,), actions=actions), _plain(Foot.RIGHT_HIND)))


def for_the_vet() -> CowEntry:
    """Sensitive tissue open on the left hind: the work on that foot was stopped."""
    found = FindingEntry(LesionCode.TU, Claw.LATERAL, 1, 3)
    foot = FootEntry(
        Foot.LEFT_HIND,
        has_pain=True,
        has_swelling=True,
        sensitive_tissue=True,
        findings=(found,),
    )
    return CowEntry((foot,), MobilityScale.UK, 3, note="stopped; herd manager rang the vet")


def _plain(foot: Foot) -> FootEntry:
    return FootEntry(foot, actions=TRIM_STEPS)


def _drawn(rates: Rates, chance: Random, day: date, standing: list[StandingBlock]) -> CowEntry:
    seen = lesions_today(chance, rates, CowPast(1.0, day), 1.0, day)
    return routine_entry(chance, rates, seen, standing)


def _standing(visit: Visit) -> dict[int, list[StandingBlock]]:
    rows = Block.objects.within(visit.scope).filter(cow__farm_id=visit.farm_id, off_on__isnull=True)
    found: dict[int, list[StandingBlock]] = {}
    for row in rows:
        block = StandingBlock(Foot(row.foot), Claw(row.claw), BlockKind(row.kind), row.put_on)
        found.setdefault(row.cow_id, []).append(block)
    return found
