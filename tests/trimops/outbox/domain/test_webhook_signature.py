"""Held against the PyPI package `standardwebhooks`, which we did not write."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st
from standardwebhooks.webhooks import Webhook, WebhookVerificationError

from trimops.outbox.domain.webhook_signature import signed_headers, written_secret

KEY = bytes(range(32))


@given(st.binary(min_size=24, max_size=64), st.text(max_size=200), st.uuids(), st.integers(0, 2**31))
def test_the_signature_is_that_of_the_reference(key, text, message_id, seconds):
    secret = written_secret(key)
    headers = signed_headers(secret=secret, message_id=str(message_id), seconds=seconds, body=text.encode())
    reference = Webhook(secret).sign(str(message_id), datetime.fromtimestamp(seconds, UTC), text)
    assert headers["webhook-signature"] == reference


def test_the_reference_takes_our_headers_and_refuses_them_with_another_body_or_secret():
    now = int(datetime.now(UTC).timestamp())
    body = '{"type": "visit.planned"}'
    headers = signed_headers(secret=written_secret(KEY), message_id="msg", seconds=now, body=body.encode())
    assert Webhook(written_secret(KEY)).verify(body, headers) == {"type": "visit.planned"}
    with pytest.raises(WebhookVerificationError):
        Webhook(written_secret(KEY)).verify(body + " ", headers)
    with pytest.raises(WebhookVerificationError):
        Webhook(written_secret(KEY[::-1])).verify(body, headers)
    with pytest.raises(WebhookVerificationError):
        Webhook(written_secret(KEY)).verify(body, {**headers, "webhook-timestamp": str(now - 3600)})
