"""What is left of a shift that is cut."""

from datetime import datetime

import pytest

from tests.visits.domain.planning.hand_made import monday, shift
from visits.domain.planning.replan.close_shifts import closed


def at(clock):
    return datetime.fromisoformat(monday(clock))


@pytest.mark.parametrize(
    ("since", "until", "left"),
    [
        ("06:00", "07:00", ("07:00", "17:30")),
        ("17:30", "19:00", ("07:00", "17:30")),
        ("06:00", "09:00", ("09:00", "17:30")),
        ("11:00", "19:00", ("07:00", "11:00")),
        ("11:00", "12:00", ("12:00", "17:30")),
        ("14:00", "15:00", ("07:00", "14:00")),
        ("07:00", "17:30", None),
        ("06:00", "23:00", None),
        ("12:00", "12:00", ("07:00", "17:30")),
    ],
)
def test_the_longer_stretch_is_left(since, until, left):
    found = closed(shift(max_cows=7), at(since), at(until))
    if left is None:
        assert found is None
    else:
        assert (found["start"][11:16], found["end"][11:16], found["max_cows"]) == (*left, 7)
