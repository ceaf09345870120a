import random

import pytest

from visits.domain.travel.own_drives import DrivenGap, own_drives_factor


def test_too_few_drives_teach_nothing():
    assert own_drives_factor([DrivenGap(30, 25)] * 11) is None
    assert own_drives_factor([]) is None


def test_the_stretch_is_the_median_of_plain_drives():
    gaps = [DrivenGap(22, 20)] * 7 + [DrivenGap(26, 20)] * 6
    assert own_drives_factor(gaps) == (1.1, 13)


def test_meals_waits_and_times_entered_later_do_not_count():
    plain = [DrivenGap(24, 20)] * 12
    others = [DrivenGap(90, 20), DrivenGap(1, 20), DrivenGap(40.1, 20), DrivenGap(9, 20), DrivenGap(5, 0)]
    assert own_drives_factor(plain + others * 3) == (1.2, 12)


@pytest.mark.parametrize("true", [0.9, 1.0, 1.25])
def test_a_known_stretch_is_found_among_drives_with_chance_and_a_few_meals(true):
    chance = random.Random(7)
    gaps = []
    for n in range(200):
        planned = chance.uniform(10, 45)
        meal = 30 if n % 8 == 0 else 0
        gaps.append(DrivenGap(planned * true * chance.lognormvariate(0, 0.1) + meal, planned))
    assert own_drives_factor(gaps)[0] == pytest.approx(true, rel=0.05)
