"""What another program hears when nothing is heard of somebody."""

import json

import pytest

from tests.trimops.outbox.webhooks import make_webhook
from tests.visits.services.lone_watch.watched import after, can_tell, look, watch_of, watched_house
from trimops.outbox.models import Outgoing
from visits.services.lone_watch.tell_watch_event import tell_watch_event

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def _way_out(settings):
    can_tell(settings)


def raised(house):
    rows = Outgoing.objects.within(house.scope).filter(channel="webhook").order_by("id")
    return [told for row in rows if (told := json.loads(row.body))["type"] == "watch.raised"]


def test_it_is_told_when_the_first_on_the_list_is_and_not_again_for_the_next():
    house = watched_house()
    make_webhook(house)
    watch = watch_of(house)
    look(watch, 30)
    assert raised(house) == []
    look(watch, 40)
    look(watch, 60)
    (told,) = raised(house)
    assert told["data"]["visit"] == watch.visit_id
    assert told["data"]["farm"]["name"] == watch.visit.farm.name
    assert house.trimmer.name not in json.dumps(told)


def test_a_watch_that_is_only_tried_out_is_no_event():
    house = watched_house()
    make_webhook(house)
    watch = watch_of(house)
    watch.is_test = True
    tell_watch_event(watch=watch, at=after(watch, 40))
    assert raised(house) == []
