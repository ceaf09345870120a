"""The rates of routine, corrective and urgent cows, from visits of which only the sum of all their cows is known.

Method: on a visit with cows of two kinds the using cows are shared out by the expected number of either, again and
again until the rates stand (EM; Dempster, Laird and Rubin 1977, from memory).
"""

from collections.abc import Sequence

import numpy as np

from visits.domain.kit.forecast.cow_rates import CowCounts, CowRate, learn_rate
from visits.domain.kit.forecast.first_guess import FirstGuess
from visits.domain.kit.forecast.past_work import PastWork
from visits.domain.kit.forecast.spread import Flags, Floats
from visits.domain.kit.forecast.use_model import CowRates

ROUNDS, STANDS = 200, 1e-5


def learn_rates(work: PastWork, users: Sequence[int], guess: FirstGuess) -> CowRates:
    """`users`: by visit of the past work, the cows that used some."""
    using = np.array(users, dtype=float)
    sore = _of_lame(work, using, guess)

    def rate(where: Flags, seen: Floats, used: Floats, usual: float) -> CowRate:
        counts = CowCounts(work.farm[where], seen[where], used[where], work.weight[where])
        return learn_rate(counts, usual, guess.worth)

    chances, every = guess.chances, np.ones(len(using), dtype=bool)
    return CowRates(
        rate(every, work.routine, using - sore, chances.routine),
        rate(~work.is_urgent, work.lame, sore, chances.corrective),
        rate(work.is_urgent, work.lame, sore, chances.urgent),
    )


def _of_lame(work: PastWork, using: Floats, guess: FirstGuess) -> Floats:
    """By visit, how many of the using cows were lame or re-checked."""
    chances = guess.chances
    rates = np.array([chances.routine, chances.corrective, chances.urgent])
    start, sore = rates * guess.worth, using
    urgent, other = work.weight * work.is_urgent, work.weight * ~work.is_urgent
    cows = np.array([work.weight @ work.routine, other @ work.lame, urgent @ work.lame]) + guess.worth
    for _ in range(ROUNDS):
        before, sore = rates, _shared(work, using, rates)
        rates = (start + np.array([work.weight @ (using - sore), other @ sore, urgent @ sore])) / cows
        if np.abs(rates - before).max() < STANDS:
            break
    return sore


def _shared(work: PastWork, using: Floats, rates: Floats) -> Floats:
    """The using cows that were lame or re-checked, as these rates let expect."""
    of_lame = work.lame * np.where(work.is_urgent, rates[2], rates[1])
    expected = of_lame + work.routine * rates[0]
    share = np.divide(of_lame, expected, out=np.ones_like(expected), where=expected > 0)
    # Never more of either kind than there were.
    found: Floats = np.clip(using * share, np.maximum(using - work.routine, 0), work.lame)
    return found
