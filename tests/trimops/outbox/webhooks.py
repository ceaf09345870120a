"""A business with a web address of another program on its list."""

from tests.factories import NOON, House
from trimops.outbox.domain.webhook_events import CHOOSABLE, WebhookEvent
from trimops.outbox.models import WebhookAddress
from trimops.outbox.services.add_webhook import WebhookWish, add_webhook

URL = "https://books.example/hooks"


def make_webhook(
    house: House, url: str = URL, events: tuple[WebhookEvent, ...] = CHOOSABLE, name: str = "Books"
) -> WebhookAddress:
    return add_webhook(business=house.business, wish=WebhookWish(name, url, events), at=NOON, by=house.owner)
