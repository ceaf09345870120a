import numpy as np
import pytest

from tests.visits.domain.kit.forecast.made_models import RECHECK, ROUTINE, URGENT, made
from visits.domain.kit.forecast.first_guess import first_guess
from visits.domain.kit.forecast.learn_rates import learn_rates
from visits.domain.kit.forecast.past_work import past_work

GUESS = first_guess([])


def drawn(kinds, *, seed=3):
    """Visits (reason, routine, corrective) whose cows use some with 5, 40 and 70 %."""
    chance = np.random.default_rng(seed)
    past, users = [], []
    for number, (reason, routine, lame) in enumerate(kinds):
        used = chance.binomial(routine, 0.05) + chance.binomial(lame, 0.7 if reason is URGENT else 0.4)
        past.append(
            made(int(used), routine=routine, corrective=lame, reason=reason, farm=number % 9, days=-number)
        )
        users.append(int(used))
    return past, users


def means(kinds):
    past, users = drawn(kinds)
    rates = learn_rates(past_work(past), users, GUESS)
    return rates.routine.mean, rates.corrective.mean, rates.urgent.mean


def test_visits_with_cows_of_one_kind_tell_the_rate_of_that_kind():
    kinds = [(ROUTINE, 30, 0), (RECHECK, 0, 6), (URGENT, 0, 4)] * 150
    assert means(kinds) == pytest.approx((0.05, 0.4, 0.7), abs=0.04)


def test_visits_with_cows_of_both_kinds_are_shared_out():
    assert means([(ROUTINE, 30, 6), (ROUTINE, 20, 12), (URGENT, 10, 4)] * 150) == pytest.approx(
        (0.05, 0.4, 0.7), abs=0.06
    )


def test_never_more_of_a_kind_than_there_were():
    rates = learn_rates(past_work([made(6, routine=1, corrective=5)] * 40), [6] * 40, GUESS)
    assert rates.routine.mean > 0.9
    assert rates.corrective.mean > 0.9


def test_without_visits_the_guess_alone_speaks():
    rates = learn_rates(past_work([]), [], GUESS)
    chances = GUESS.chances
    assert (rates.routine.mean, rates.urgent.mean) == pytest.approx((chances.routine, chances.urgent))
