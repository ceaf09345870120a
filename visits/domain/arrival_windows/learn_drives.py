"""How drives and mornings spread, from a business's own days.

Method: the middle and the width of the span that holds four in five (its width is 2.563 standard deviations of a normal
curve), because that span is what is to be kept, and because a gap between two visits may hide a talk or fuel; each
figure is drawn towards the usual one, which is worth so many drives. Gaps shorter than half or longer than twice the
drive are none, and those in which the meal may lie are not to be handed in.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from visits.domain.arrival_windows.day_ahead import Spread
from visits.domain.visit_lengths.spread_shape import quantile

WORTH = 20.0
FOUR_IN_FIVE = 2.563
LEAST_DRIVE = 5.0
LATEST = 90.0
"""Minutes; a first farm reached later than that was not a late start but another plan."""


@dataclass(frozen=True)
class Driven:
    """A drive between two visits of a day: minutes as reckoned beforehand, and from finish to start."""

    reckoned: float
    really: float


def learn_drives(
    usual: Spread, between: Sequence[Driven], first_late: Sequence[tuple[float, float]]
) -> Spread:
    """`usual` with what the drives and the mornings say. `first_late`: (drive, minutes late) at the first farm."""
    logs = [
        math.log(drive.really / drive.reckoned)
        for drive in between
        if drive.reckoned >= LEAST_DRIVE and 0.5 <= drive.really / drive.reckoned <= 2
    ]
    ratio, spread = _towards(logs, math.log(usual.drive_ratio), usual.drive_spread)
    learned = replace(usual, drive_ratio=math.exp(ratio), drive_spread=spread)
    return _learn_leaving(learned, [pair for pair in first_late if abs(pair[1]) <= LATEST])


def _learn_leaving(usual: Spread, first_late: Sequence[tuple[float, float]]) -> Spread:
    """Late at the first farm is late off the yard and a slow drive; the drive's part is taken out."""
    off = [late - drive * (usual.drive_ratio - 1) for drive, late in first_late]
    late, spread = _towards(off, usual.leave_late, usual.leave_spread)
    by_road = [(drive * usual.drive_spread) ** 2 for drive, _ in first_late]
    rest = spread**2 - (sum(by_road) / len(by_road) if by_road else 0.0)
    return replace(usual, leave_late=late, leave_spread=math.sqrt(max(1.0, rest)))


def _towards(values: Sequence[float], usual: float, usual_spread: float) -> tuple[float, float]:
    """Middle and spread of the values, drawn towards the usual ones."""
    if not values:
        return usual, usual_spread
    ordered = sorted(values)
    low, high = quantile(ordered, 0.1), quantile(ordered, 0.9)
    middle, spread = (low + high) / 2, (high - low) / FOUR_IN_FIVE
    own = len(values) / (len(values) + WORTH)
    return usual + own * (middle - usual), usual_spread + own * (spread - usual_spread)
