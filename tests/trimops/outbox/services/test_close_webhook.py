from datetime import timedelta

import pytest

from tests.factories import NOON, make_house
from tests.trimops.outbox.webhooks import make_webhook
from trimops.outbox.services.close_webhook import close_webhook

pytestmark = pytest.mark.django_db


def test_a_closed_address_keeps_no_secret_and_the_hour_of_the_first_closing():
    row = make_webhook(make_house())
    secret = row.secret
    close_webhook(address=row, at=NOON)
    again = close_webhook(address=row, at=NOON + timedelta(hours=1))
    assert again.closed_at == NOON
    assert secret not in again.secret
