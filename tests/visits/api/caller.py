"""Somebody who calls the API, each call under a new key unless one is given."""

import json
from typing import Any
from uuid import uuid4

from django.test import Client

from trimops.accounts.models import User


class Caller:
    """Addresses are written from /api/v1 on. Faults of the program are raised."""

    def __init__(self, user: User) -> None:
        self.client = Client()
        self.client.force_login(user)

    def get(self, address: str) -> Any:
        return self.client.get(f"/api/v1{address}")

    def post(self, address: str, body: object = None, *, key: str = "") -> Any:
        return self._send("POST", address, body, {"Idempotency-Key": key or str(uuid4())})

    def patch(self, address: str, body: object, *, match: str = "*") -> Any:
        return self._send("PATCH", address, body, {"If-Match": match})

    def delete(self, address: str, *, match: str = "*") -> Any:
        return self._send("DELETE", address, None, {"If-Match": match})

    def _send(self, method: str, address: str, body: object, headers: dict[str, str]) -> Any:
        sent = b"" if body is None else json.dumps(body).encode()
        return self.client.generic(
            method, f"/api/v1{address}", sent, content_type="application/json", headers=headers
        )


def code_of(answer: Any) -> tuple[int, str]:
    """Status and code of a refusal."""
    return answer.status_code, answer.json()["code"]
