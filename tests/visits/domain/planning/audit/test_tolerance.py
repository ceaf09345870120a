from fractions import Fraction

import pytest

from visits.domain.planning.audit.tolerance import kms, mins, money, same_distance, same_money, same_time


def test_the_tolerances_are_a_tenth_of_a_second_a_metre_and_a_hundredth():
    assert same_time(0, 100_000)
    assert not same_time(0, 100_001)
    assert same_distance(5, 6)
    assert not same_distance(5, Fraction("6.001"))
    assert same_money(Fraction(1), Fraction("1.01"))
    assert not same_money(Fraction(1), Fraction("1.011"))


def test_sums_beyond_what_a_printed_number_can_tell_are_compared_as_far_as_it_can():
    assert same_money(Fraction(10**16 + 8), Fraction(10**16))
    assert not same_money(Fraction(10**16 + 200), Fraction(10**16))


@pytest.mark.parametrize(
    ("told", "words"),
    [
        (mins(720_000_000), "12 min"),
        (mins(-90_000_000), "-1.5 min"),
        (mins(200_000), "0.2 s"),
        (kms(9_125), "9.125 km"),
        (kms(50), "0.05 km"),
        (money(Fraction(-1, 10)), "-0.1"),
        (money(Fraction(100)), "100"),
    ],
)
def test_differences_in_words(told, words):
    assert told == words
