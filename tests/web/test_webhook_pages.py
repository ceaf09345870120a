import pytest
from django.urls import reverse

from tests.factories import make_house
from tests.trimops.outbox.webhooks import URL, make_webhook
from trimops.outbox.models import Outgoing, WebhookAddress

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


@pytest.fixture
def desk(house, client):
    client.force_login(house.owner)
    return client


def add(desk, **data):
    told = {"name": "Books", "url": URL, "events": ["visit.planned", "invoice.paid"], **data}
    return desk.post(reverse("webhooks"), told)


def test_the_secret_is_shown_once_and_never_kept_by_a_browser(house, desk):
    answer = add(desk)
    row = WebhookAddress.objects.within(house.scope).get()
    assert row.secret in answer.content.decode()
    assert answer["Cache-Control"] == "private, no-store"
    assert row.secret not in desk.get(reverse("webhooks")).content.decode()
    assert row.events == ["visit.planned", "invoice.paid"]


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ({"url": "http://books.example/"}, "must begin with https://"),
        ({"url": "https://169.254.169.254/"}, "open internet"),
        ({"url": ""}, "Its web address"),
        ({"events": []}, "Choose what it is told of"),
        ({"events": ["visit.dreamt"]}, "Select a valid choice"),
        ({"name": ""}, "What we call it"),
    ],
)
def test_what_is_to_mend_stands_on_the_page_and_nothing_typed_is_lost(house, desk, data, words):
    answer = add(desk, **data)
    assert answer.status_code == 400
    page = answer.content.decode()
    assert words in page
    assert data.get("name", "Books") in page
    assert not WebhookAddress.objects.within(house.scope).exists()


def test_a_test_message_goes_and_the_page_says_what_became_of_it(house, desk):
    row = make_webhook(house)
    answer = desk.post(reverse("webhook_try", args=[row.pk]), follow=True)
    assert "A test message goes to Books" in answer.content.decode()
    assert Outgoing.objects.within(house.scope).get().address == URL
    assert "Waiting to go" in answer.content.decode()


def test_closed_it_is_on_the_page_no_more(house, desk):
    row = make_webhook(house)
    answer = desk.post(reverse("webhook_close", args=[row.pk]), follow=True)
    page = answer.content.decode()
    assert "No other program is told what happens" in page
    assert URL not in page
    row.refresh_from_db()
    assert row.closed_at is not None
