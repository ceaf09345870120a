import base64

import pytest

from tests.factories import NOON, make_house
from tests.trimops.outbox.webhooks import URL, make_webhook
from trimops.outbox.domain.webhook_events import WebhookEvent
from trimops.outbox.services.add_webhook import MOST_ADDRESSES, WebhookRefused
from trimops.outbox.services.close_webhook import close_webhook

pytestmark = pytest.mark.django_db


def test_an_address_gets_a_secret_of_its_own():
    house = make_house()
    first, second = make_webhook(house), make_webhook(house, URL + "/2")
    assert len(base64.b64decode(first.secret.removeprefix("whsec_"))) == 32
    assert first.secret != second.secret


def test_it_is_told_of_what_was_chosen_in_the_order_of_the_list():
    row = make_webhook(
        make_house(), events=(WebhookEvent.INVOICE_PAID, WebhookEvent.VISIT_PLANNED, WebhookEvent.TEST)
    )
    assert row.events == ["visit.planned", "invoice.paid"]


@pytest.mark.parametrize(
    "url",
    [
        *(
            "http://books.example/",
            "https://127.0.0.1/",
            "https://books.example:8443/",
            "ftp://books.example/",
        ),
        *("https://ann:pw@books.example/", "books.example", "", "https://[::1]/", "javascript:alert(1)"),
    ],
)
def test_an_address_that_may_not_be_asked_is_refused_at_once(url):
    with pytest.raises(WebhookRefused) as no:
        make_webhook(make_house(), url)
    assert no.value.field == "url"


def test_without_anything_chosen_it_would_never_be_told():
    with pytest.raises(WebhookRefused) as no:
        make_webhook(make_house(), events=())
    assert no.value.field == "events"


def test_an_address_stands_on_the_list_once_until_it_is_closed():
    house = make_house()
    row = make_webhook(house)
    with pytest.raises(WebhookRefused, match="already"):
        make_webhook(house)
    make_webhook(make_house("another"))
    close_webhook(address=row, at=NOON)
    assert make_webhook(house).pk != row.pk


def test_there_are_not_more_than_can_be_told_in_good_time():
    house = make_house()
    for number in range(MOST_ADDRESSES):
        make_webhook(house, f"{URL}/{number}")
    with pytest.raises(WebhookRefused, match="close one"):
        make_webhook(house, f"{URL}/more")
