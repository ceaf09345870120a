"""The steps of the brief: 1, 5, 30 minutes, 2 and 8 hours, then a person looks at it (our choice, no source)."""

from datetime import UTC, datetime, timedelta

import pytest

from trimops.outbox.domain.retry_pauses import next_try

AT = datetime(2026, 3, 2, 18, tzinfo=UTC)


def test_it_waits_longer_each_time_and_then_no_more():
    waits = [(next_try(tries, AT) - AT) / timedelta(minutes=1) for tries in range(1, 6)]
    assert waits == [1, 5, 30, 120, 480]
    assert next_try(6, AT) is None
    assert next_try(60, AT) is None


def test_what_was_never_tried_is_not_tried_again():
    with pytest.raises(ValueError, match="nothing was tried"):
        next_try(0, AT)
