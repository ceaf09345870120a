"""How long a visit under way will have lasted in all, now that so many cows are done.

Method: the minutes until the last cow let go are held against what was expected until then. Their ratio says how
fast this visit runs; it is drawn towards 1, as the spread of a visit's pace stands to the spread of so few cows
(normal with normal, on logarithms), and what is left is stretched by it. Of a visit's variance half is taken for
its pace and half for mishaps that come as time goes (common practice, no source). Single cows spread by 0.3 of
their time (15.9 +- 4.4 and 11.1 +- 3.5 min: Pesenhofer 2006).
"""

import math
from dataclasses import dataclass

COW_SPREAD = 0.3
PACE_SHARE = 0.5


@dataclass(frozen=True)
class Expected:
    """Minutes before the first cow, at the crush for all `cows`, and after the last; the whole's standard deviation."""

    before: float
    at_crush: float
    after: float
    cows: float
    spread: float

    @property
    def minutes(self) -> float:
        return self.before + self.at_crush + self.after


@dataclass(frozen=True)
class SoFar:
    """Cows let go, and the minutes from the start until the last of them."""

    cows: int
    minutes: float


def visit_so_far(expected: Expected, so_far: SoFar) -> tuple[float, float]:
    """Minutes in all and their standard deviation. As expected while no cow is done; ValueError on times below 0."""
    if so_far.minutes < 0 or so_far.cows < 0:
        raise ValueError("a visit that ended before it began")
    if so_far.cows == 0 or so_far.minutes == 0:
        return expected.minutes, expected.spread
    cows = max(expected.cows, so_far.cows, 1)
    each = expected.at_crush / max(expected.cows, 1)
    by_now, left = expected.before + each * so_far.cows, each * (cows - so_far.cows) + expected.after
    pace, few = PACE_SHARE * (expected.spread / expected.minutes) ** 2, COW_SPREAD**2 / so_far.cows
    pull = pace / (pace + few)
    left *= math.exp(pull * math.log(so_far.minutes / by_now))
    mishaps = (1 - PACE_SHARE) * expected.spread**2 * min(1.0, left / expected.minutes)
    single_cows = (COW_SPREAD * each) ** 2 * (cows - so_far.cows)
    return so_far.minutes + left, max(1.0, math.sqrt(left**2 * pace * (1 - pull) + mishaps + single_cows))
