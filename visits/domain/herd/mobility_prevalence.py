"""How much of the herd walked lame, scoring by scoring, each scale by itself.

Method: cows scored lame on their own scale (UK 0 to 3: 2 and over; Sprecher 1 to 5: 3 and over) / cows scored, only
of scorings of the whole herd, Wilson interval at 95 %. Unit: cows per 100 cows scored, the interval likewise. Source:
score sheets as in visits.domain.mobility; the UK sheet counts (2s + 3s) / cows scored.

Two scales are never one series: no validated table of one against the other was found (trade-facts D6).

Must not be read as the state of the herd when `is_soon_after_trim`: scores worsen just after a trim (Van Hertem et al.
2014: score 3 and over 14 % before, 34 % straight after, 20 % two months later, 288 cows). Flagged is a scoring in the
7 days after at least one in ten of the cows scored had been trimmed; 7 days and one in ten are our choice.
"""

from dataclasses import dataclass
from datetime import date, timedelta

from visits.domain.herd.facts import HerdFacts, HerdScored
from visits.domain.herd.intervals import Interval, share_of
from visits.domain.mobility import MobilityScale, is_lame

SOON_AFTER_DAYS = 7
TRIMMED_SHARE = 0.1


@dataclass(frozen=True)
class MobilityPrevalence:
    """One scoring: `lame` (and of them `very_lame`) of `scored` cows. `per_100` and `interval` per 100 cows scored.

    `trimmed_before` counts the cows trimmed on that day or in the 7 days before.
    """

    day: date
    scale: MobilityScale
    lame: int
    very_lame: int
    scored: int
    per_100: float | None
    interval: Interval | None
    trimmed_before: int
    is_soon_after_trim: bool


def mobility_series(facts: HerdFacts) -> dict[MobilityScale, tuple[MobilityPrevalence, ...]]:
    """Every whole-herd scoring in order of days, by its scale; a scale without one is not there."""
    series: dict[MobilityScale, tuple[MobilityPrevalence, ...]] = {}
    for scored in sorted(facts.scorings, key=lambda s: s.day):
        if scored.whole_herd and scored.scores:
            series[scored.scale] = (*series.get(scored.scale, ()), mobility_prevalence(facts, scored))
    return series


def mobility_prevalence(facts: HerdFacts, scored: HerdScored) -> MobilityPrevalence:
    """One scoring by itself; the caller looks whether it was of the whole herd."""
    found = share_of(sum(is_lame(scored.scale, score) for score in scored.scores), len(scored.scores))
    since = scored.day - timedelta(days=SOON_AFTER_DAYS)
    trimmed = {look.cow for look in facts.seen_between(since, scored.day + timedelta(days=1))}
    return MobilityPrevalence(
        day=scored.day,
        scale=scored.scale,
        lame=found.count,
        very_lame=sum(score >= scored.scale.very_lame_from for score in scored.scores),
        scored=found.total,
        per_100=found.per_100,
        interval=found.per_100_interval,
        trimmed_before=len(trimmed),
        is_soon_after_trim=found.total > 0 and len(trimmed) >= TRIMMED_SHARE * found.total,
    )
