"""How often the 95 % intervals of shrunken rates hold the true rate, with 3 to 40 herds of one business.

Bar (issue 5): 93 to 97 in 100. Herds as they are found: common mean 3 to 40 of 100, herds that differ as
published ones do (precision 5 to 60), 60 to 400 cows. Printed besides, each with its own fixed mean and spread:
small rounds, herds that are all but equal (the intervals are then a little too wide), and herds that have nothing
to do with each other. Fewer than four herds are never shown (see `LEAST_HERDS`).
"""

from dataclasses import dataclass

import numpy as np

from visits.domain.herd.shrunken_rates import HerdCount, HerdsTogether, herds_together

LEAST, MOST = 0.93, 0.97
HERD_NUMBERS = (3, 5, 10, 40)
TOLD, TOLD_BESIDES = 6000, 2000


@dataclass(frozen=True)
class Business:
    """How a business's herds are drawn; None: drawn anew for each business."""

    words: str
    mean: float | None = None
    precision: float | None = None
    cows: tuple[int, int] = (60, 400)


AS_FOUND = Business("as they are found")
OTHERS = (
    Business("mean 15, unlike", 0.15, 12),
    Business("mean 5, unlike, 20 to 60 cows", 0.05, 15, (20, 60)),
    Business("mean 10, unlike, 15 to 40 cows", 0.10, 10, (15, 40)),
    Business("mean 20, alike", 0.2, 200),
    Business("mean 20, all but equal", 0.2, 2000),
    Business("mean 20, nothing in common", 0.2, 3),
)


def main() -> None:
    print("in 100 of the 95 % intervals that hold the truth: shares / differences from the other herds' mean")
    print(f"  {'':32}" + "".join(f"{herds:6} herds   " for herds in HERD_NUMBERS))
    for business in (AS_FOUND, *OTHERS):
        told = TOLD if business is AS_FOUND else TOLD_BESIDES
        kept = [coverage(business, herds, told, seed=3) for herds in HERD_NUMBERS]
        print(f"  {business.words:32}" + "".join(f"{100 * s:8.1f} / {100 * d:.1f}" for s, d in kept))
        if business is AS_FOUND:
            check([share for pair in kept for share in pair])


def coverage(business: Business, herds: int, told: int, seed: int) -> tuple[float, float]:
    """Of so many intervals of shares, and of those of differences (up to eight a business), the part that holds it."""
    chance = np.random.default_rng(seed)
    shares, differences = [], []
    for _ in range(-(-told // herds)):
        together, truth = drawn(business, herds, chance)
        shares += _shares_held(together, truth)
        differences += _differences_held(together, truth)
    return sum(shares) / len(shares), sum(differences) / len(differences)


def drawn(business: Business, herds: int, chance) -> tuple[HerdsTogether, list[float]]:
    """The counts of one business's herds, and their true shares."""
    mean = business.mean or chance.uniform(0.03, 0.4)
    precision = business.precision or np.exp(chance.uniform(np.log(5), np.log(60)))
    truth = chance.beta(mean * precision, (1 - mean) * precision, herds)
    seen = chance.integers(business.cows[0], business.cows[1] + 1, herds)
    cows = chance.binomial(seen, truth)
    together = herds_together([HerdCount(int(c), int(s)) for c, s in zip(cows, seen, strict=True)])
    assert together is not None
    return together, list(truth)


def _shares_held(together: HerdsTogether, truth: list[float]) -> list[bool]:
    """Whether the truth lies between the bounds: the same as having 2.5 to 97.5 in 100 below it."""
    return [0.025 <= together.share_of(herd).chance_below(share) <= 0.975 for herd, share in enumerate(truth)]


def _differences_held(together: HerdsTogether, truth: list[float]) -> list[bool]:
    return [
        together.beside_others(herd).difference.holds(truth[herd] - np.mean(np.delete(truth, herd)))
        for herd in range(min(8, len(truth)))
    ]


def check(kept: list[float]) -> None:
    """AssertionError when a share is not within the bar."""
    for share in kept:
        if not LEAST <= share <= MOST:
            raise AssertionError(f"{share:.3f} of the 95 % intervals hold the truth, not {LEAST} to {MOST}")


if __name__ == "__main__":
    main()
