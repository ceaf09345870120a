"""The nearest term counts: the farm's own, the payer's, the business's."""

from datetime import date

import pytest

from invoicing.domain.due_day import due_day

FIRST = date(2026, 3, 2)


@pytest.mark.parametrize(
    ("days", "expected"),
    [
        ((14, 7, 30), date(2026, 3, 16)),
        ((None, 7, 30), date(2026, 3, 9)),
        ((None, None, 30), date(2026, 4, 1)),
        ((0, 7, 30), FIRST),
        ((None, None, None), FIRST),
    ],
)
def test_the_first_term_put_down_holds(days, expected):
    assert due_day(FIRST, *days) == expected
