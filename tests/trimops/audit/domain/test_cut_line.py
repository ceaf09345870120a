from datetime import UTC, datetime, timedelta, timezone

import pytest

from trimops.audit.domain.cut_line import LEAST_YEARS, cut_line


@pytest.mark.parametrize(
    ("at", "years", "line"),
    [
        (datetime(2026, 11, 30, 23, tzinfo=UTC), 10, datetime(2016, 11, 1, tzinfo=UTC)),
        (datetime(2028, 2, 29, 12, tzinfo=UTC), 3, datetime(2025, 2, 1, tzinfo=UTC)),
        (
            datetime(2026, 1, 1, 0, 30, tzinfo=timezone(timedelta(hours=1))),
            3,
            datetime(2022, 12, 1, tzinfo=UTC),
        ),
    ],
)
def test_the_trail_is_kept_from_the_beginning_of_a_month_on(at, years, line):
    assert cut_line(at, years) == line


def test_a_period_below_the_least_is_refused():
    with pytest.raises(ValueError, match="3 years"):
        cut_line(datetime(2026, 1, 1, tzinfo=UTC), LEAST_YEARS - 1)
