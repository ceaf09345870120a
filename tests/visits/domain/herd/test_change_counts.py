from datetime import date

import pytest

from visits.domain.herd.change_counts import Counted, Counting


@pytest.mark.parametrize(("cases", "exposure", "rate"), [(3, 60, 0.05), (0, 60, 0.0), (0, 0, None)])
def test_the_rate_of_a_period_is_told_only_when_there_was_something_to_count_over(cases, exposure, rate):
    assert Counted(date(2025, 1, 1), date(2025, 4, 1), cases, exposure).rate == rate


def test_what_is_counted_over_is_written_in_words():
    assert [counting.label for counting in Counting] == ["of cows seen", "over cow years"]
