"""How long a sign-in lasts."""

from datetime import timedelta

import pytest
from django.test import Client
from django.utils import timezone

from tests.factories import make_user
from trimops.accounts.web.session_life import BEGAN, HEARD

PAGE = "/account/devices/"
DAY = 86_400


@pytest.fixture
def client(db):
    client = Client()
    client.force_login(make_user())
    assert client.get(PAGE).status_code == 200
    return client


def turn_back(client, **days):
    """As if it had begun, or been heard of, so many days earlier."""
    session, now = client.session, timezone.now().timestamp()
    session.update({{"began": BEGAN, "heard": HEARD}[what]: now - ago * DAY for what, ago in days.items()})
    session.save()


def is_in(client):
    return client.get(PAGE).status_code == 200


def test_whoever_is_heard_of_now_and_then_stays(client):
    turn_back(client, began=59, heard=13)
    assert is_in(client)
    # And was heard of by that.
    assert timezone.now().timestamp() - client.session[HEARD] < 60


@pytest.mark.parametrize("ago", [{"began": 61, "heard": 0}, {"began": 20, "heard": 15}])
def test_who_began_too_long_ago_or_was_silent_too_long_signs_in_again(client, ago):
    turn_back(client, **ago)
    assert not is_in(client)
    assert "_auth_user_id" not in client.session


def test_the_owner_of_the_machine_sets_both(client, settings):
    settings.SESSION_IDLE_DAYS = 1
    turn_back(client, began=3, heard=2)
    assert not is_in(client)


def test_a_session_of_before_this_rule_begins_now(client):
    session = client.session
    del session[BEGAN], session[HEARD]
    session.save()
    assert is_in(client)
    assert client.session[BEGAN] == pytest.approx(timezone.now().timestamp(), abs=60)


def test_a_busy_session_is_not_written_at_every_request(client):
    turn_back(client, began=1, heard=timedelta(minutes=20) / timedelta(days=1))
    before = client.session[HEARD]
    assert is_in(client)
    assert client.session[HEARD] == before
