"""Every address of the JSON side does what its row says, and believes no other site."""

import json
import logging
from uuid import uuid4

import pytest
from django.db import transaction
from django.test import Client
from django.urls import reverse

from tests.walls.example_rows import BY_THE_FARM, STOPPED, example_call
from tests.walls.routes import API, every_pattern
from trimops.accounts.actions import action_of
from trimops.api.told_besides import kept_examples
from trimops.api.view import Api
from trimops.web.scoped_api import ScopedApi

ADDRESSES = pytest.mark.parametrize("name", API)


@pytest.fixture(autouse=True)
def _quiet(caplog):
    """Refusals are expected here by the hundred; only what breaks is to be read."""
    caplog.set_level(logging.CRITICAL, logger="django.request")


def view_of(name):
    (pattern,) = [pattern for pattern in every_pattern() if pattern.name == name]
    return pattern.callback.cls


@ADDRESSES
def test_each_method_does_what_the_row_says(name):
    view, does = view_of(name), API[name].does
    assert issubclass(view, ScopedApi)
    if issubclass(view, Api):
        assert {method: op.action for method, op in view.ops.items()} == does
    else:
        assert does == {m: action_of(view.does, m) for m in ("get", "post", "put") if hasattr(view, m)}


@ADDRESSES
def test_a_request_forged_by_another_site_is_refused(name, mine):
    """A browser signs every request with its cookie; only ours knows the token as well."""
    client = Client(enforce_csrf_checks=True)
    client.force_login(mine.house.owner)
    for method in set(API[name].does) - {"get"}:
        address = reverse(name, kwargs=API[name].parts(mine.keys))
        answer = client.generic(method.upper(), address, b"{}", content_type="application/json")
        assert (answer.status_code, answer.json()["code"]) == (403, "not_allowed"), method


def test_an_address_that_names_no_action_is_closed_to_all():
    assert ScopedApi.does is None


def test_the_examples_of_the_description_are_taken(mine, db):
    """Each is sent with own ids put in. It is done, or refused by the rule that is named for it, never as malformed."""
    people = {True: client_of(mine.house.client), False: client_of(mine.house.owner)}
    told = {}
    for name in kept_examples():
        with transaction.atomic():
            told[name] = sent(people[name in BY_THE_FARM], name, mine)
            transaction.set_rollback(True)
    refused = {name: answer.json()["code"] for name, answer in told.items() if answer.status_code >= 400}
    assert refused.items() - STOPPED.items() == set()


def client_of(user):
    client = Client()
    client.force_login(user)
    return client


def sent(client, name, furnished):
    method, address, body = example_call(name, furnished)
    headers = {"If-Match": "*", "Idempotency-Key": str(uuid4())}
    return client.generic(method, address, json.dumps(body), content_type="application/json", headers=headers)
