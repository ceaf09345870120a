from datetime import timedelta

import pytest

from tests.factories import NOON, make_house
from visits.models import LoneWatch, WatchEvent
from visits.services.drop_old_watches import drop_old_watches


def watch(house, state, ended_at):
    row = LoneWatch.objects.create(
        business=house.business, trimmer=house.trimmer, state=state, began_at=NOON, expected_finish=NOON,
        ended_at=ended_at, is_test=True,
    )  # fmt: skip
    WatchEvent.objects.create(business=house.business, watch=row, at=NOON, words="Asked.")
    return row


@pytest.mark.django_db
def test_a_watch_that_ended_before_goes_with_its_log_and_an_open_one_stays():
    house = make_house()
    watch(house, "ended", NOON - timedelta(days=1))
    kept = [watch(house, "ended", NOON), watch(house, "watching", None)]
    assert drop_old_watches(scope=house.scope, before=NOON) == 1
    assert set(LoneWatch.objects.within(house.scope)) == set(kept)
    assert WatchEvent.objects.within(house.scope).count() == 2
