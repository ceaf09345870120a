"""From the event to the other program and back, over a real line."""

import json
from datetime import timedelta

import pytest
from django.utils import timezone
from standardwebhooks.webhooks import Webhook

from tests.factories import NOON, make_house
from tests.services.odd_server import hangs_up, odd_server, points_to, says
from tests.services.processes import free_port
from tests.trimops.outbox.webhooks import make_webhook
from trimops.errands.kinds import TryLater
from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.models import Outgoing
from trimops.outbox.senders.senders import SENDERS
from trimops.outbox.senders.webhook import send_by_webhook
from trimops.outbox.services.close_webhook import close_webhook
from trimops.outbox.services.send_outgoing import is_away, send_outgoing
from trimops.outbox.services.try_webhook import try_webhook

pytestmark = pytest.mark.django_db(transaction=True)


def sent(answer, settings, meanwhile=None):
    """The message, its address and what the server heard, after one try."""
    house = make_house()
    with odd_server(answer) as server:
        settings.INNER_ADDRESSES = [server.place]
        address = make_webhook(house, server.address + "/hook")
        message = try_webhook_later(address)
        if meanwhile:
            meanwhile(address)
        go(message)
    message.refresh_from_db()
    address.refresh_from_db()
    return message, address, server


def try_webhook_later(address):
    """Written, and not handed out by itself: the test hands it over."""
    message = try_webhook(address=address, at=NOON)
    Outgoing.objects.within(message.scope).filter(pk=message.pk).update(
        state="waiting", tries=0, next_try_at=None
    )
    return message


def go(message, clock=timezone.now):
    try:
        send_outgoing(outgoing_id=message.pk, clock=clock)
    except TryLater as later:
        return later.at
    return None


def test_webhooks_go_by_this_sender():
    assert SENDERS[Channel.WEBHOOK] is send_by_webhook


def test_what_arrives_is_what_was_written_and_proves_to_be_ours(settings):
    message, address, server = sent(says(b"thanks"), settings)
    assert (message.state, message.last_words) == ("went", "Answered 200.")
    headers, body = server.headers[-1], server.bodies[-1]
    assert Webhook(address.secret).verify(body.decode(), headers) == json.loads(message.body)
    assert headers["webhook-id"] == str(message.key)
    assert headers["content-type"] == "application/json"


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        (says(b"", 500), "Answered 500"),
        (says(b"", 404), "Answered 404"),
        (points_to("https://elsewhere.example/"), "points to another address"),
        (hangs_up, "broke off"),
    ],
)
def test_what_was_not_taken_waits_for_another_try_and_holds_up_nobody_else(settings, answer, words):
    message, address, _ = sent(answer, settings)
    assert (message.state, address.closed_at) == ("waiting", None)
    assert message.next_try_at is not None
    assert words in message.last_words
    assert not is_away(Channel.WEBHOOK)


def test_a_later_try_bears_the_same_id_and_a_new_time(settings):
    house = make_house()
    with odd_server(says(b"", 503)) as server:
        settings.INNER_ADDRESSES = [server.place]
        message = try_webhook_later(make_webhook(house, server.address + "/hook"))
        again = go(message)
        go(message, lambda: again + timedelta(seconds=1))
    first, second = server.headers[-2:]
    assert first["webhook-id"] == second["webhook-id"]
    assert int(second["webhook-timestamp"]) > int(first["webhook-timestamp"])
    assert first["webhook-signature"] != second["webhook-signature"]


def test_whoever_says_gone_is_told_nothing_more(settings):
    message, address, _ = sent(says(b"", 410), settings)
    assert message.state == "failed"
    assert address.closed_at is not None


def test_a_message_to_an_address_closed_meanwhile_does_not_go(settings):
    message, _, _ = sent(
        says(b""), settings, meanwhile=lambda address: close_webhook(address=address, at=NOON)
    )
    assert (message.state, message.last_words) == ("failed", "This web address is closed.")


def test_an_address_that_leads_inside_by_now_is_not_asked(settings):
    house, place = make_house(), f"127.0.0.1:{free_port()}"
    settings.INNER_ADDRESSES = [place]
    address = make_webhook(house, f"http://{place}/hook")
    settings.INNER_ADDRESSES = []
    message = try_webhook_later(address)
    go(message)
    message.refresh_from_db()
    assert "must begin with https" in message.last_words
