"""Trims as they stood in the crush."""

from tests.factories import NOON
from tests.visits.services.sendings import HOUR
from visits.domain.crush_entry import CowEntry
from visits.models import Trim
from visits.services.stored_cow import StoredCow, in_order


def test_they_go_by_time_and_then_by_which_was_first_kept():
    cows = [
        StoredCow(Trim(pk=pk, recorded_at=at), CowEntry(), NOON.date(), at)
        for pk, at in ((1, NOON + HOUR), (3, NOON), (2, NOON))
    ]
    assert [cow.trim.pk for cow in in_order(cows)] == [2, 3, 1]
