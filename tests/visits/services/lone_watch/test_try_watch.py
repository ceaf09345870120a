"""The test tells everybody for real, and nobody takes it for the real thing."""

import pytest

from tests.factories import NOON
from tests.visits.services.lone_watch.watched import addresses, calls, log, sent
from visits.models import WatchContact
from visits.services.lone_watch.find_due_watches import find_due_watches
from visits.services.lone_watch.save_watch_rules import CannotTellAnybody
from visits.services.lone_watch.try_watch import try_watch


def test_everybody_on_the_list_is_told_that_it_is_a_test(house):
    watch = try_watch(business=house.business, at=NOON, by=house.owner)
    assert addresses(house) == ["neighbour@home.example", "0199 555 020"]
    for outgoing in sent(house):
        assert "Nobody is missing" in outgoing.body or "nobody is missing" in outgoing.body
        assert "did not check in at" not in outgoing.body
    assert watch.is_test
    assert len(calls(watch)) == 2
    assert "Test: S. Sister is told." in log(watch)


def test_a_test_is_never_looked_at_again(house):
    try_watch(business=house.business, at=NOON, by=house.owner)
    assert find_due_watches(at=NOON) == 0


def test_each_test_is_sent_anew(house):
    for _ in range(2):
        try_watch(business=house.business, at=NOON, by=house.owner)
    assert len(sent(house)) == 4


def test_it_is_refused_where_nothing_can_leave(house, settings):
    settings.EMAIL_HOST = ""
    with pytest.raises(CannotTellAnybody, match="no mail server"):
        try_watch(business=house.business, at=NOON, by=house.owner)


def test_it_is_refused_where_nobody_is_on_the_list(house):
    WatchContact.objects.within(house.scope).delete()
    with pytest.raises(CannotTellAnybody, match="Nobody is on the list"):
        try_watch(business=house.business, at=NOON, by=house.owner)
