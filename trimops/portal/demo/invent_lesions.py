"""Which lesions one cow shows today: how many, what, on which foot and claw, how bad."""

from dataclasses import dataclass
from datetime import date
from random import Random

from trimops.portal.demo.chances import happens, how_many, mean_for_any, one_of
from trimops.portal.demo.demo_files import Rates
from visits.domain.crush_entry import FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import LESIONS, DDStage, LesionCode

Place = tuple[Foot, LesionCode]


@dataclass
class CowPast:
    """What the generator remembers of a cow: how prone she is, when she was last seen, where it last hurt."""

    proneness: float
    seen_on: date
    sore_place: Place | None = None


def lesions_today(
    chance: Random, rates: Rates, cow: CowPast, herd_factor: float, day: date
) -> dict[Foot, list[FindingEntry]]:
    """Findings by foot; empty for a cow with sound feet."""
    spread = rates.herd_spread + rates.cow_spread + rates.herd_spread * rates.cow_spread
    mean = mean_for_any(rates.any_lesion, spread) * cow.proneness * herd_factor
    found: dict[Place, FindingEntry] = {}
    for _ in range(how_many(chance, mean)):
        place = _place(chance, rates, cow, day)
        found.setdefault(place, finding(chance, rates, place))
        cow.sore_place = place
    by_foot: dict[Foot, list[FindingEntry]] = {}
    for (foot, _), entry in found.items():
        by_foot.setdefault(foot, []).append(entry)
    return by_foot


def finding(chance: Random, rates: Rates, place: Place, severity: int | None = None) -> FindingEntry:
    """One lesion on its usual claw and zone; `severity` as given, or drawn."""
    foot, code = place
    lesion = LESIONS[code]
    return FindingEntry(
        lesion=code,
        claw=Claw.SKIN if lesion.on_skin else _claw(chance, rates, foot),
        zone=chance.choice(sorted(lesion.zones)) if lesion.zones else None,
        severity=severity or chance.choices((1, 2, 3), rates.severity_shares)[0],
        dd_stage=DDStage(one_of(chance, rates.stage_shares)) if code is LesionCode.DD else None,
    )


def _place(chance: Random, rates: Rates, cow: CowPast, day: date) -> Place:
    if cow.sore_place and happens(chance, rates.same_place_again):
        return cow.sore_place
    return _foot(chance, rates), _lesion(chance, rates, day)


def _lesion(chance: Random, rates: Rates, day: date) -> LesionCode:
    shares = {
        code: share * (rates.season[code][day.month - 1] if code in rates.season else 1)
        for code, share in rates.lesion_shares.items()
    }
    code = one_of(chance, shares)
    if code == "WL":
        code = "WLA" if happens(chance, rates.white_line_abscess_share) else "WLF"
    return LesionCode(code)


def _foot(chance: Random, rates: Rates) -> Foot:
    if happens(chance, rates.hind_share):
        return chance.choice((Foot.LEFT_HIND, Foot.RIGHT_HIND))
    return chance.choice((Foot.LEFT_FORE, Foot.RIGHT_FORE))


def _claw(chance: Random, rates: Rates, foot: Foot) -> Claw:
    if foot.is_hind:
        return Claw.LATERAL if happens(chance, rates.hind_outer_share) else Claw.MEDIAL
    return Claw.MEDIAL if happens(chance, rates.fore_inner_share) else Claw.LATERAL
