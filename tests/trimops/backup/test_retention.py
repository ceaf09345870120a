"""Which backups may go: calendar corners as a table, and what holds for all of them."""

from datetime import UTC, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.backup.retention import Keep, backups_to_drop


def stamps(*days: str) -> list[datetime]:
    return [datetime.fromisoformat(day).replace(tzinfo=UTC) for day in days]


@pytest.mark.parametrize(
    ("there", "keep", "dropped"),
    [
        pytest.param([], Keep(7, 5, 12), [], id="none"),
        pytest.param(["2026-11-30T02"], Keep(), [], id="the only one"),
        pytest.param(
            ["2026-11-29T02", "2026-11-30T02"], Keep(), ["2026-11-29T02"], id="nothing asked: the newest"
        ),
        pytest.param(
            ["2026-11-30T02", "2026-11-30T14", "2026-11-30T20"],
            Keep(days=3),
            ["2026-11-30T02", "2026-11-30T14"],
            id="the last of a day",
        ),
        pytest.param(
            ["2025-01-05T02", "2025-03-01T02", "2026-11-30T02"],
            Keep(days=3),
            [],
            id="days without one do not count",
        ),
        # 2020 has an ISO week 53 that ends on Sunday 3 January 2021: one week over two years.
        pytest.param(
            ["2020-12-27T02", "2020-12-28T02", "2020-12-31T02", "2021-01-03T02", "2021-01-04T02"],
            Keep(weeks=3),
            ["2020-12-28T02", "2020-12-31T02"],
            id="week 53",
        ),
        # Monday 30 December 2024 belongs to week 1 of 2025; Sunday the 29th to week 52 of 2024.
        pytest.param(
            ["2024-12-29T02", "2024-12-30T02", "2025-01-02T02"],
            Keep(weeks=2),
            ["2024-12-30T02"],
            id="week 1 early",
        ),
        # Week 1 of 2024 and week 1 of 2025 are two weeks.
        pytest.param(["2024-01-03T02", "2025-01-02T02"], Keep(weeks=2), [], id="week 1 of two years"),
        pytest.param(
            ["2028-02-28T02", "2028-02-29T02", "2028-03-01T02"],
            Keep(months=2),
            ["2028-02-28T02"],
            id="leap day",
        ),
        pytest.param(
            ["2028-02-28T02", "2028-02-29T02", "2028-03-01T02"],
            Keep(days=2),
            ["2028-02-28T02"],
            id="a leap day counts",
        ),
        pytest.param(["2025-11-30T02", "2026-11-30T02"], Keep(months=2), [], id="november of two years"),
        pytest.param(
            ["2026-10-30T02", "2026-10-31T02", "2026-11-28T02", "2026-11-29T02", "2026-11-30T02"],
            Keep(days=2, weeks=1, months=2),
            ["2026-10-30T02", "2026-11-28T02"],
            id="each span holds its own",
        ),
    ],
)
def test_what_no_day_week_or_month_holds_may_go(there, keep, dropped):
    assert backups_to_drop(stamps(*there), keep) == set(stamps(*dropped))


def test_a_day_is_a_day_of_utc_wherever_the_stamp_was_made():
    west = timezone(timedelta(hours=-8))
    late, next_day = datetime(2026, 11, 29, 20, tzinfo=west), datetime(2026, 11, 30, 9, tzinfo=UTC)
    assert backups_to_drop([late, next_day], Keep(days=2)) == {late}


def test_less_than_nothing_cannot_be_kept():
    with pytest.raises(ValueError, match="below nought"):
        Keep(days=-1)


HOURS = 10 * 366 * 24
made = st.sets(
    st.integers(0, HOURS).map(lambda hours: datetime(2019, 1, 1, tzinfo=UTC) + timedelta(hours=hours))
)
keeps = st.builds(Keep, *[st.integers(0, 9)] * 3)


@given(made, keeps)
def test_the_newest_stays_and_dropping_again_drops_nothing(there, keep):
    drop = backups_to_drop(there, keep)
    assert drop <= there
    assert not there or max(there) not in drop
    assert backups_to_drop(there - drop, keep) == set()


@given(made, keeps)
def test_no_more_stay_than_were_asked_for_and_more_asked_for_keeps_more(there, keep):
    kept = there - backups_to_drop(there, keep)
    assert len(kept) <= max(1, keep.days + keep.weeks + keep.months)
    wider = Keep(keep.days + 1, keep.weeks + 1, keep.months + 1)
    assert kept <= there - backups_to_drop(there, wider)


@given(made)
def test_dropping_every_night_leaves_what_dropping_once_leaves(there):
    keep, left = Keep(3, 2, 2), set()
    for stamp in sorted(there):
        left |= {stamp}
        left -= backups_to_drop(left, keep)
    assert left == there - backups_to_drop(there, keep)
