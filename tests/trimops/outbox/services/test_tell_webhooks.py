import json
from datetime import datetime, timedelta, timezone
from decimal import Decimal

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import NOON, make_house
from tests.trimops.outbox.webhooks import URL, make_webhook
from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.models import Outgoing
from trimops.outbox.services.close_webhook import close_webhook
from trimops.outbox.services.tell_webhooks import tell_webhooks

pytestmark = pytest.mark.django_db
FARM = {"id": 7, "name": "Żółty Dwór {secret}"}


def tell(house, event=WebhookEvent.VISIT_PLANNED, data=None, once="visit 1"):
    return tell_webhooks(business_id=house.business.pk, event=event, data=data or {}, at=NOON, once=once)


def test_each_address_that_wants_it_is_told_and_no_other():
    house = make_house()
    wanting = make_webhook(house, events=(WebhookEvent.VISIT_PLANNED,))
    make_webhook(house, URL + "/money", events=(WebhookEvent.INVOICE_PAID,))
    close_webhook(address=make_webhook(house, URL + "/closed"), at=NOON)
    make_webhook(make_house("another"))
    (message,) = tell(house)
    assert (message.address, message.channel, message.topic) == (wanting.url, "webhook", "event")


def test_told_twice_it_is_told_once_and_each_address_for_itself():
    house = make_house()
    make_webhook(house)
    assert len(tell(house)) == 1
    make_webhook(house, URL + "/2")
    assert [message.address for message in tell(house)] == [URL + "/2"]
    assert Outgoing.objects.within(house.scope).count() == 2


def test_the_message_says_what_happened_to_what_and_when():
    house = make_house()
    make_webhook(house)
    summer = datetime(2026, 7, 1, 9, 30, tzinfo=timezone(timedelta(hours=2)))
    data = {"visit": 3, "starts": summer, "payable": Decimal("1234.50"), "van": None, "farm": FARM}
    (message,) = tell(house, data=data)
    told = json.loads(message.body)
    assert told.pop("id")
    assert told == {
        "type": "visit.planned",
        "timestamp": "2026-03-03T12:00:00Z" if NOON.day == 3 else told["timestamp"],
        "data": {
            "visit": 3,
            "starts": "2026-07-01T07:30:00Z",
            "payable": "1234.50",
            "van": None,
            "farm": FARM,
        },
    }
    assert message.farm_id == 7, "it goes when the farm is erased"


def test_the_event_has_one_name_for_every_address():
    house = make_house()
    make_webhook(house)
    make_webhook(house, URL + "/2")
    first, second = tell(house)
    assert json.loads(first.body)["id"] == json.loads(second.body)["id"]
    assert first.key != second.key
    assert json.loads(tell(house, once="visit 2")[0].body)["id"] != json.loads(first.body)["id"]


def test_where_nobody_listens_it_costs_one_question_and_nothing_is_gathered():
    house = make_house()
    with CaptureQueriesContext(connection) as asked:
        told = tell_webhooks(
            business_id=house.business.pk,
            event=WebhookEvent.VISIT_PLANNED,
            data=lambda: pytest.fail("gathered for nobody"),
            at=NOON,
            once="x",
        )
    assert told == []
    assert len([query for query in asked if "SAVEPOINT" not in query["sql"]]) == 1


def test_what_could_not_be_read_again_is_refused():
    house = make_house()
    make_webhook(house)
    with pytest.raises(TypeError, match="nothing to tell"):
        tell(house, data={"who": object()})
