from dataclasses import replace

import numpy as np
import pytest

from visits.domain.kit.forecast.cow_rates import CowCounts, FarmCows, learn_rate


def counts(*visits, weight=1.0):
    """(farm, cows seen, cows that used some) of each."""
    farm, seen, used = (np.array(column) for column in zip(*visits, strict=True))
    return CowCounts(
        farm.astype(np.int64), seen.astype(float), used.astype(float), np.full(len(visits), weight)
    )


def drawn(farms, visits, *, mean=0.1, cows=30, spread=0.0, among=0.0, seed=4):
    """Visits of farms whose rates differ by `spread`, and between visits by `among` (standard deviations)."""
    chance = np.random.default_rng(seed)
    rows = []
    for farm in range(farms):
        own = np.clip(chance.normal(mean, spread), 0.001, 1)
        for _ in range(visits):
            rate = np.clip(chance.normal(own, among), 0, 1)
            rows.append((farm, cows, chance.binomial(cows, rate)))
    return counts(*rows)


def test_the_business_s_rate_starts_from_what_is_usual_and_leaves_it():
    assert learn_rate(counts((1, 0, 0)), 0.022, 40).mean == 0.022
    assert learn_rate(counts((1, 40, 4)), 0.02, 40).mean == pytest.approx(0.06)
    assert learn_rate(drawn(20, 40), 0.5, 40).mean == pytest.approx(0.1, abs=0.005)


def test_farms_that_differ_are_told_from_farms_that_are_alike():
    alike, different = (learn_rate(drawn(40, 30, spread=s), 0.1, 40) for s in (0.0, 0.05))
    assert different.farms**0.5 == pytest.approx(0.05, abs=0.015)
    assert alike.farms < different.farms / 5


def test_visits_that_differ_more_than_chance_are_seen():
    alike, different = (learn_rate(drawn(20, 40, among=s), 0.1, 40) for s in (0.0, 0.06))
    assert different.visits**0.5 == pytest.approx(0.06, abs=0.015)
    assert alike.visits < different.visits / 5


def test_a_farm_s_own_rate_is_drawn_towards_the_business_s_the_more_the_fewer_its_cows():
    rows = [(farm, 30, 3) for farm in range(20) for _ in range(10)]
    rows += [(98, 30, 9)] + [(99, 30, 9)] * 20
    rate = learn_rate(counts(*rows), 0.1, 40)
    few, many, new = (mean_of(rate, farm) for farm in (98, 99, 100))
    assert 0.1 < new < few < many < 0.3
    assert many > 0.25
    assert mean_of(rate, None) == new == pytest.approx(rate.mean)


def mean_of(rate, farm):
    a, b = rate.curve(farm)
    return a / (a + b)


def doubt_of(rate, farm):
    """The variance of a visit's chance."""
    a, b = rate.curve(farm)
    return a * b / (a + b) ** 2 / (a + b + 1)


def test_a_new_farm_is_doubted_more_than_a_known_one_and_a_new_business_most():
    rate = learn_rate(drawn(20, 40, spread=0.05), 0.1, 40)
    assert doubt_of(rate, 3) < doubt_of(rate, None)
    fresh = learn_rate(counts((1, 0, 0)), 0.1, 40)
    assert doubt_of(rate, None) < doubt_of(fresh, None)


def test_older_visits_weigh_less():
    old, new = counts((1, 30, 0)), counts((1, 30, 6))
    both = CowCounts(
        *(np.concatenate([getattr(c, n) for c in (old, new)]) for n in ("farm", "seen", "used", "weight"))
    )
    faded = replace(both, weight=np.array([0.1, 1.0]))
    assert learn_rate(faded, 0.1, 40).mean > learn_rate(both, 0.1, 40).mean


@pytest.mark.parametrize("usual", [0.0, 1.0])
def test_what_never_or_always_happened_has_no_curve(usual):
    rate = learn_rate(counts((1, 30, 30 * usual)), usual, 40)
    assert rate.mean == usual
    assert rate.curve(1) is None


def test_a_curve_has_the_mean_and_the_variances_it_was_made_of():
    rate = replace(learn_rate(counts((1, 0, 0)), 0.2, 40), doubt=0.001, farms=0.003, visits=0.002, of_farm={})
    a, b = rate.curve(None)
    assert a / (a + b) == pytest.approx(0.2)
    assert doubt_of(rate, None) == pytest.approx(0.006, rel=1e-3)
    known = replace(rate, of_farm={5: FarmCows(1e6, 3e6)})
    assert mean_of(known, 5) == pytest.approx(0.25, abs=1e-4)
    # The farm's own rate is sure by now; visits still differ, in proportion to it.
    assert doubt_of(known, 5) == pytest.approx(0.002 * (0.25 / 0.2) ** 2, rel=1e-2)
