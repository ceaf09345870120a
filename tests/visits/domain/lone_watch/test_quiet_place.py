"""A farm without a network is known by what came in late."""

from datetime import timedelta

import pytest

from visits.domain.lone_watch.quiet_place import is_late_visit, is_quiet_place

SOON, LATE = timedelta(minutes=1), timedelta(hours=2)


@pytest.mark.parametrize(
    ("waits", "late"),
    [([], False), ([SOON], False), ([LATE], True), ([SOON, LATE], True), ([SOON, SOON, LATE], False)],
)
def test_a_visit_is_late_when_half_of_it_waited(waits, late):
    assert is_late_visit(waits) is late


@pytest.mark.parametrize(
    ("visits", "quiet"),
    [
        ([], False),
        ([[]], False),
        ([[LATE]], True),
        ([[LATE], [SOON]], False),
        ([[LATE], [SOON], [LATE]], True),
        ([[SOON], [SOON], [LATE], [LATE], [LATE]], False),  # only the newest three speak
        ([[], [], [LATE]], True),  # visits that were noted on paper say nothing
    ],
)
def test_the_newest_three_visits_that_say_anything_decide(visits, quiet):
    assert is_quiet_place(visits) is quiet
