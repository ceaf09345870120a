"""A message to another program is signed, so that it can tell ours from anybody's (Standard Webhooks, symmetric `v1`).

What is signed, the headers and the form of the secret: github.com/standard-webhooks/standard-webhooks, from memory; the
tests hold it equal to the PyPI package `standardwebhooks`.
"""

import base64
import hashlib
import hmac

PREFIX = "whsec_"
SECRET_BYTES = 32


def written_secret(key: bytes) -> str:
    """The secret as it is handed to the other side."""
    return PREFIX + base64.b64encode(key).decode()


def signed_headers(*, secret: str, message_id: str, seconds: int, body: bytes) -> dict[str, str]:
    """The three headers of one try. `seconds`: of that try, since 1970; `message_id`: the same at each."""
    key = base64.b64decode(secret.removeprefix(PREFIX))
    signed = f"{message_id}.{seconds}.".encode() + body
    mark = base64.b64encode(hmac.new(key, signed, hashlib.sha256).digest()).decode()
    return {"webhook-id": message_id, "webhook-timestamp": str(seconds), "webhook-signature": f"v1,{mark}"}
