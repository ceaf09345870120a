"""Every address of the JSON side, closed to strangers, to other parts, to other businesses."""

import logging
from itertools import product

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import make_user
from tests.walls.routes import API, every_pattern
from trimops.accounts.roles import Role
from trimops.web.refusals import PROBLEM
from trimops.web.scoped_api import ScopedApi

ADDRESSES = pytest.mark.parametrize("name", API)
METHODS = ("get", "post", "put")


@pytest.fixture(autouse=True)
def _quiet(caplog):
    """Refusals are expected here by the hundred; only what breaks is to be read."""
    caplog.set_level(logging.CRITICAL, logger="django.request")


def view_of(name):
    (pattern,) = [pattern for pattern in every_pattern() if pattern.name == name]
    return pattern.callback.cls


def address(name, *keyrings):
    return reverse(name, kwargs=API[name].parts(*keyrings))


def call(client, method, name, *keyrings):
    return client.generic(method.upper(), address(name, *keyrings), b"{}", content_type="application/json")


def methods_of(name):
    return [method for method in METHODS if hasattr(view_of(name), method)]


@ADDRESSES
def test_it_opens_to_the_parts_that_the_table_says(name):
    assert issubclass(view_of(name), ScopedApi)
    assert view_of(name).roles == API[name].roles
    assert methods_of(name)


@ADDRESSES
def test_a_stranger_is_told_to_sign_in_by_code(name, mine, db):
    for method in METHODS:
        answer = call(Client(), method, name, mine.keys)
        assert (answer.status_code, answer["Content-Type"]) == (403, PROBLEM)
        assert answer.json()["code"] == "not_signed_in"


@ADDRESSES
def test_other_parts_and_a_person_without_a_business_are_refused(name, mine, signed_in):
    others = [mine.house.memberships[role].user for role in set(Role) - API[name].roles]
    for user, method in product([*others, make_user()], METHODS):
        answer = call(signed_in(user), method, name, mine.keys)
        assert (answer.status_code, answer.json()["code"]) == (403, "not_allowed"), method


@ADDRESSES
def test_another_businesss_rows_are_not_there_in_the_same_words_as_rows_that_never_were(
    name, mine, theirs, signed_in
):
    nowhere = {**mine.keys, "under_way": 987_654_321}
    for role, method in product(API[name].roles, methods_of(name)):
        client = signed_in(mine.house.memberships[role].user)
        gone, foreign = (call(client, method, name, keys) for keys in (nowhere, theirs.keys))
        assert (gone.status_code, foreign.status_code) == (404, 404)
        assert gone.json() == foreign.json()


@ADDRESSES
def test_a_wrong_method_is_said_to_be_one(name, mine, signed_in):
    user = mine.house.memberships[Role.TRIMMER].user
    for method in set(METHODS) - set(methods_of(name)):
        answer = call(signed_in(user), method, name, mine.keys)
        assert (answer.status_code, answer.json()["code"]) == (405, "method_not_allowed")


@ADDRESSES
def test_a_request_forged_by_another_site_is_refused(name, mine):
    """A browser signs every request with its cookie; only ours knows the token as well."""
    client = Client(enforce_csrf_checks=True)
    client.force_login(mine.house.trimmer)
    for method in methods_of(name):
        assert call(client, method, name, mine.keys).status_code == 403
