"""How likely a cow is to use a consumable: the business's rate, and each farm's own drawn towards it.

Method: empirical Bayes, by moments. Of each visit the cows seen and the cows that used some are known. Around the
business's rate p, errors of two visits of the same farm have the product n m tau2 in the mean (how much farms truly
differ), the square of one visit's error n p q + n (n - 1) (tau2 + sigma2) (what visits of a farm differ beyond chance).
Both variances are drawn towards a usual value by how little the history says of them. A farm's rate is then a beta
curve: the business's, taken on by the farm's own cows, those of one visit counted for less because they go together. A
visit's number of using cows is beta-binomial with the farm's mean and both doubts. With no cow of its own a farm has
the business's rate.

Unit: chances 0 to 1. Source: the moments of the beta-binomial (textbook); that older visits weigh less is ours.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from visits.domain.kit.forecast.spread import Floats, Wholes

USUAL_FARMS, USUAL_VISITS = 0.5, 0.25
"""Standard deviation of farms' rates, and of visits' within a farm, as parts of the business's (no source)."""
SURE = 1e-9
TIGHTEST = 1e7


@dataclass(frozen=True)
class FarmCows:
    """A farm's own cows: how many used some and how many did not, as far as each counts on its own."""

    used: float
    unused: float


@dataclass(frozen=True)
class CowRate:
    """`mean` is the business's chance, `doubt` how unsure that mean is, `farms` and `visits` the true differences
    between farms and between visits of one farm; the last three are variances."""

    mean: float
    doubt: float
    farms: float
    visits: float
    of_farm: Mapping[int, FarmCows]

    def curve(self, farm: int | None) -> tuple[float, float] | None:
        """The beta curve (a, b) of a visit's chance at that farm. None where it is surely none or surely all."""
        if not SURE < self.mean < 1 - SURE:
            return None
        precision = _precision(self.mean, self.farms + self.doubt)
        own = self.of_farm.get(farm, NO_COWS) if farm is not None else NO_COWS
        a, b = self.mean * precision + own.used, (1 - self.mean) * precision + own.unused
        mean = a / (a + b)
        variance = mean * (1 - mean) / (a + b + 1) + self.visits * (mean / self.mean) ** 2
        told = _precision(mean, variance)
        return mean * told, (1 - mean) * told


NO_COWS = FarmCows(0.0, 0.0)


@dataclass(frozen=True)
class CowCounts:
    """Visits one by one: the farm, cows seen, cows that used some (may be broken), how much the visit counts."""

    farm: Wholes
    seen: Floats
    used: Floats
    weight: Floats


def learn_rate(counts: CowCounts, usual: float, worth: float) -> CowRate:
    """The rate of these visits; the business's chance starts from `usual`, worth so many cows."""
    there = counts.seen > 0
    farm, n, w = counts.farm[there], counts.seen[there], counts.weight[there]
    k: Floats = np.minimum(counts.used[there], n)
    mean = float((np.dot(w, k) + usual * worth) / (np.dot(w, n) + worth))
    if not SURE < mean < 1 - SURE:
        return CowRate(mean, 0.0, 0.0, 0.0, {})
    names, inverse = np.unique(farm, return_inverse=True)
    at: Wholes = inverse.astype(np.int64)
    farms, visits = _variances(at, n, k - n * mean, w, mean)
    spread = mean * (1 - mean)
    alone = w / (1 + (n - 1) * min(1.0, visits / spread))
    used, unused = np.bincount(at, alone * k), np.bincount(at, alone * (n - k))
    own = {
        int(name): FarmCows(u, v) for name, u, v in zip(names, used.tolist(), unused.tolist(), strict=True)
    }
    doubt = spread / (float(np.sum(used + unused)) + worth + 1) + farms / (len(names) + 1)
    return CowRate(mean, doubt, farms, visits, own)


def _variances(at: Wholes, n: Floats, errors: Floats, w: Floats, mean: float) -> tuple[float, float]:
    """Between farms, and between visits of a farm; each not quite nought, so that doubt never ends."""
    spread = mean * (1 - mean)
    weighed = w * errors
    products = float(np.sum(np.bincount(at, weighed) ** 2) - np.sum(weighed**2)) if len(n) else 0.0
    pairs = float(np.sum(np.bincount(at, w * n) ** 2) - np.sum((w * n) ** 2)) if len(n) else 0.0
    farms = _drawn_in(products, pairs, spread, USUAL_FARMS * mean)
    beyond = float(np.dot(w, errors**2 - n * spread))
    both = float(np.dot(w, n * (n - 1)))
    whole = _drawn_in(beyond, both, spread, USUAL_VISITS * mean, more=farms)
    return farms, max(whole - farms, (0.02 * mean) ** 2)


def _drawn_in(seen: float, size: float, spread: float, usual: float, more: float = 0.0) -> float:
    """The variance `seen / size`, drawn towards `usual` squared: both weighed by the inverse of their own variance."""
    start = usual**2 + more
    own = size / (2 * spread**2)
    guess = 1 / start**2
    found = (max(seen, 0.0) / 2 / spread**2 + guess * start) / (own + guess)
    return min(max(found, (0.02 * usual) ** 2), 0.9 * spread)


def _precision(mean: float, variance: float) -> float:
    """a + b of the beta curve with that mean and variance."""
    return min(max(mean * (1 - mean) / max(variance, 1e-15) - 1, 0.05), TIGHTEST)
