import json

import pytest

from tests.factories import NOON, make_house
from tests.trimops.outbox.webhooks import make_webhook
from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.services.close_webhook import close_webhook
from trimops.outbox.services.try_webhook import WebhookClosed, try_webhook

pytestmark = pytest.mark.django_db


def test_a_test_message_goes_whatever_the_address_wants_to_hear_and_as_often_as_asked():
    row = make_webhook(make_house(), events=(WebhookEvent.INVOICE_PAID,))
    sent = [try_webhook(address=row, at=NOON) for _ in range(2)]
    assert len({message.key for message in sent}) == 2
    assert json.loads(sent[0].body)["type"] == "test"


def test_a_closed_address_gets_no_test_message():
    row = close_webhook(address=make_webhook(make_house()), at=NOON)
    with pytest.raises(WebhookClosed):
        try_webhook(address=row, at=NOON)
