"""How many of the cows seen in one round had a lesion.

Method: cows with the lesion / cows seen in the round, each cow once, Wilson interval at 95 %. A lesion counts in its
parent as well (a sole ulcer is an ulcer), so the rates of a round do not add up. Unit: cows per 100 cows seen, the
interval likewise. Source: the usual cow-level prevalence of claw-health benchmarks (trade-facts 4: clean cows are
counted as seen).

Must not be shown as the herd's rate when `is_herd_rate` is false: cows picked out for bad feet read higher (Solano et
al. 2016). Then it says something of the cows seen, and nothing of the rest.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from visits.domain.herd.facts import CowSeen
from visits.domain.herd.intervals import Interval, share_of
from visits.domain.herd.lesion_families import (
    HEEL_EROSION_IS,
    LesionFamily,
    What,
    has_any,
    lesions_on,
    what_label,
)
from visits.domain.herd.rounds import TrimRound
from visits.domain.lesion_names import family_of
from visits.domain.lesions import LesionCode


@dataclass(frozen=True)
class LesionRate:
    """`cows` of `seen` had it, in a herd of `herd`. `code` None: any lesion. `per_100` and `interval` per 100 cows."""

    what: str
    code: What
    cows: int
    seen: int
    herd: int
    per_100: float | None
    interval: Interval | None
    is_herd_rate: bool


def rates_of_round(
    trim_round: TrimRound, heel_erosion: LesionFamily = HEEL_EROSION_IS
) -> tuple[LesionRate, ...]:
    """Any lesion, the three families, then every lesion that was seen, the most frequent first."""
    alike = Counter(lesions_on(cow) for cow in trim_round.seen)
    codes = {code for found in alike for code in found}
    codes |= {family_of(code) for code in codes}
    lesions = [_rate(trim_round, code, _cows(alike, code)) for code in LesionCode if code in codes]
    families = [_rate(trim_round, each, _cows(alike, each, heel_erosion)) for each in LesionFamily]
    whole = _rate(trim_round, None, _cows(alike, None))
    return (whole, *families, *sorted(lesions, key=lambda rate: -rate.cows))


def rate_of(trim_round: TrimRound, what: What, heel_erosion: LesionFamily = HEEL_EROSION_IS) -> LesionRate:
    """The rate of one lesion (with its kinds), of a family, or of any lesion; also when none was seen."""
    return _rate(trim_round, what, cows_with(trim_round.seen, what, heel_erosion))


def cows_with(seen: Iterable[CowSeen], what: What, heel_erosion: LesionFamily = HEEL_EROSION_IS) -> int:
    """How many different cows had it at one look or more."""
    return len({look.cow for look in seen if has_any(lesions_on(look), what, heel_erosion)})


def _cows(
    alike: Mapping[frozenset[LesionCode], int], what: What, heel_erosion: LesionFamily = HEEL_EROSION_IS
) -> int:
    """Of cows gathered by what they had (each cow once), how many had it."""
    return sum(cows for codes, cows in alike.items() if has_any(codes, what, heel_erosion))


def _rate(trim_round: TrimRound, what: What, cows: int) -> LesionRate:
    found = share_of(cows, trim_round.cows)
    return LesionRate(
        what=what_label(what),
        code=what,
        cows=cows,
        seen=trim_round.cows,
        herd=trim_round.herd,
        per_100=found.per_100,
        interval=found.per_100_interval,
        is_herd_rate=trim_round.is_whole_herd,
    )
