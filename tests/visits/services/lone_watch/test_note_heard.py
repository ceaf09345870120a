"""The phone reached us: that is not yet a word that all is well."""

from tests.factories import make_farm, make_van, under_way
from tests.visits.services.lone_watch.watched import after, again, look, watch_of
from visits.domain.lone_watch.watch_states import WatchState
from visits.services.lone_watch.note_heard import note_heard


def hear(house, watch, minutes, person=None):
    return note_heard(scope=house.scope, trimmer=person or house.trimmer, at=after(watch, minutes))


def test_it_is_kept_at_most_once_a_minute(house):
    watch = watch_of(house)
    assert hear(house, watch, 0) == 1
    assert hear(house, watch, 0.5) == 0
    assert again(watch).last_heard_at == after(watch, 0)
    assert hear(house, watch, 1) == 1
    assert again(watch).last_heard_at == after(watch, 1)


def test_it_answers_no_question(house):
    watch = watch_of(house)
    look(watch, 30)
    hear(house, watch, 39)
    assert look(watch, 40).state == WatchState.TOLD


def test_another_persons_page_is_not_his(house):
    watch = watch_of(house)
    assert hear(house, watch, 0, house.owner) == 0
    assert again(watch).last_heard_at is None


def test_two_vans_are_heard_each_for_itself(house):
    first = watch_of(house)
    other = make_van(house.business, house.owner, "Van 2")
    farm = make_farm(house.business, "High Croft", by=house.owner)
    second = under_way(farm, other).watches.within(house.scope).get()
    hear(house, first, 0, house.owner)
    assert again(first).last_heard_at is None
    assert again(second).last_heard_at == after(first, 0)
