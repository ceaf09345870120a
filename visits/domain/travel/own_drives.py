"""How a business's own drives compare with the times it plans by."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

FEWEST = 12
LEAST, MOST = 0.5, 2.0


@dataclass(frozen=True)
class DrivenGap:
    """From finishing at one farm to starting at the next on the same day, and what the plan would allow."""

    minutes: float
    planned_minutes: float


def own_drives_factor(gaps: Sequence[DrivenGap]) -> tuple[float, int] | None:
    """(median of gap to planned minutes, number of drives it rests on); None below twelve drives.

    A gap below half or above double of the plan is no plain drive (a wait, fuel, a time entered later) and does not
    count; those in which the meal may lie are not to be handed in. What waiting is left makes the factor too
    long rather than too short, so it is offered, never set by itself. The bounds and the twelve are ours: common
    practice, no source.
    """
    ratios = [gap.minutes / gap.planned_minutes for gap in gaps if gap.planned_minutes > 0]
    plain = [ratio for ratio in ratios if LEAST <= ratio <= MOST]
    return (round(median(plain), 2), len(plain)) if len(plain) >= FEWEST else None
