"""Whatever the trimmer opens says that they are heard."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from tests.visits.services.lone_watch.watched import again, watch_of
from tests.visits.web.lone_watch.conftest import sits


def is_heard(watch):
    at = again(watch).last_heard_at
    return at is not None and timezone.now() - at < timedelta(minutes=1)


@pytest.mark.parametrize("name", ["this_week", "crush_days", "crush_today"])
def test_any_page_is_a_word_of_life(house, desk, name):
    watch = watch_of(house)
    desk.get(reverse(name))
    assert is_heard(watch)


def test_the_page_that_begins_the_watch_is_heard_too(house, desk):
    watch = watch_of(house)
    desk.get(reverse("visit", args=[watch.visit_id]))
    assert is_heard(watch)


def test_others_are_not_heard_for_him(house):
    watch = watch_of(house)
    for user in (house.owner, house.office, house.client):
        sits(user).get("/")
    assert not is_heard(watch)


def test_it_costs_one_question_where_nobody_is_watched(house, desk):
    desk.get(reverse("crush_today"))
    with CaptureQueriesContext(connection) as queries:
        desk.get(reverse("crush_today"))
    asked = [query["sql"] for query in queries if "visits_lonewatch" in query["sql"]]
    assert len(asked) == 1
