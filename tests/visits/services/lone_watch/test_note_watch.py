"""The log of a watch."""

from tests.factories import NOON
from tests.visits.services.lone_watch.watched import watch_of
from visits.models import WatchEvent
from visits.services.lone_watch.note_watch import note_watch


def test_what_happened_and_when_it_came_to_be_known(house):
    watch = watch_of(house)
    note_watch(watch=watch, words="x" * 400, at=NOON)
    kept = WatchEvent.objects.within(house.scope).latest("id")
    assert kept.at == NOON
    assert kept.noted_at > NOON, "by the database's own clock"
    assert kept.words == "x" * 300
