from datetime import timedelta

import pytest

from trimops.errands.domain.pauses import LONGEST_SECONDS, MOST_TRIES, pause_after


def test_the_pauses_grow_fourfold_up_to_an_hour():
    seconds = [pause_after(tries, 0.5).total_seconds() for tries in range(1, MOST_TRIES)]
    assert seconds == [2, 8, 32, 128, 512, 2048, 3600]


@pytest.mark.parametrize(("chance", "seconds"), [(0.0, 1.0), (0.25, 1.5), (0.5, 2.0), (1.0, 3.0)])
def test_chance_draws_a_pause_out_by_up_to_a_half(chance, seconds):
    assert pause_after(1, chance) == timedelta(seconds=seconds)


def test_the_eighth_try_is_the_last_and_comes_an_hour_and_three_quarters_after_the_first():
    assert pause_after(MOST_TRIES, 0.5) is None
    assert pause_after(MOST_TRIES + 5, 0.5) is None
    whole = sum((pause_after(tries, 0.5) for tries in range(1, MOST_TRIES)), timedelta())
    assert timedelta(minutes=104) < whole < timedelta(minutes=107)
    assert (
        max(pause_after(tries, 1.0) for tries in range(1, MOST_TRIES)).total_seconds()
        == LONGEST_SECONDS * 1.5
    )


def test_without_a_try_there_is_no_pause():
    with pytest.raises(ValueError, match="nothing was tried"):
        pause_after(0, 0.5)
