"""The office, and the people of the farm, asking the API."""

import json
from collections.abc import Callable
from itertools import count

import pytest
from django.http import HttpResponse
from django.test import Client

from farms.models import FarmAccess
from tests.factories import House

Ask = Callable[..., HttpResponse]
_keys = count(1)


def asker(user: object) -> Ask:
    """`ask("POST", "/drafts/issue/", {...})`: a POST with a key of its own, a change of whichever version there is."""
    client = Client()
    client.force_login(user)

    def ask(method: str, address: str, body: object = None, **headers: str) -> HttpResponse:
        given = {name.replace("_", "-"): value for name, value in headers.items()}
        if method == "POST":
            given.setdefault("Idempotency-Key", f"key-{next(_keys)}")
        if method in ("PATCH", "DELETE"):
            given.setdefault("If-Match", "*")
        content = b"" if body is None else json.dumps(body)
        return client.generic(
            method, f"/api/v1{address}", content, content_type="application/json", headers=given
        )

    ask.client = client  # type: ignore[attr-defined]
    return ask


@pytest.fixture
def ask(house: House) -> Ask:
    return asker(house.office)


@pytest.fixture
def ask_as_farm(house: House) -> Ask:
    """The farm client, who sees invoices."""
    FarmAccess.objects.within(house.scope).update(sees_money=True)
    return asker(house.client)


def refusal(answer: HttpResponse) -> tuple[int, str]:
    """Status and code of what was refused."""
    return answer.status_code, answer.json()["code"]
