"""The one line of each request, held against every address of the program."""

import json
import logging
import re

import pytest
from django.test import Client
from django.urls import URLPattern, URLResolver, get_resolver

from tests.factories import make_house
from trimops.kernel.secret_link import new_secret
from trimops.watch.figures import REQUESTS
from trimops.watch.log_lines import JsonLines
from trimops.web.access_line import KEYS

PART = re.compile(r"<(?:(\w+):)?(\w+)>")
# Words of our own in an address, that open nothing.
PLAIN_WORDS = {"kind", "form", "week", "shift", "what", "part", "format"}
FILLED = {"int": "1", "uuid": "0192f0c1-7c3a-7c3a-9f00-0a1b2c3d4e5f", "slug": "word", "str": "word"}


def addresses(patterns=None, before=""):
    for each in patterns if patterns is not None else get_resolver().url_patterns:
        at = before + str(each.pattern)
        if isinstance(each, URLResolver):
            yield from addresses(each.url_patterns, at)
        elif isinstance(each, URLPattern):
            yield at


WITH_A_KEY = [at for at in addresses() if any(name in KEYS for _, name in PART.findall(at))]


@pytest.fixture
def lines(caplog):
    caplog.set_level(logging.INFO, logger="trimops.access")
    return lambda: [record.told for record in caplog.records if record.name == "trimops.access"]


def test_every_word_that_an_address_takes_is_a_key_or_known_to_open_nothing():
    """A new address with a secret under a new name fails here before it stands in a log."""
    words = {
        name for at in addresses() for kind, name in PART.findall(at) if kind in ("", "str", "slug", "path")
    }
    assert words - KEYS - PLAIN_WORDS == set()
    assert len(WITH_A_KEY) >= 11


def filled(at, secret):
    return "/" + PART.sub(lambda part: secret if part[2] in KEYS else FILLED[part[1] or "str"], at)


@pytest.mark.django_db
@pytest.mark.parametrize("secret", [new_secret(), "short-one"], ids=["of ours", "short"])
@pytest.mark.parametrize("at", WITH_A_KEY)
def test_no_line_of_a_request_holds_what_opens_the_address(at, secret, lines, caplog):
    path = filled(at, secret)
    Client(raise_request_exception=False).get(f"{path}?next=/bill/{secret}/", headers={"Referer": path})
    assert secret not in str(lines()[-1])
    assert lines()[-1]["path"] != "/"
    assert len(secret) < 24 or secret not in caplog.text


@pytest.mark.django_db
def test_a_request_has_one_line_with_its_business_and_no_name(lines):
    house = make_house()
    client = Client()
    client.force_login(house.owner)
    client.post("/farms/new/", {"name": "Low Croft"})
    (told,) = lines()
    assert {name: told[name] for name in ("method", "path", "route", "status", "business")} == {
        "method": "POST",
        "path": "/farms/new/",
        "route": "farm_new",
        "status": 400,
        "business": house.business.pk,
    }
    assert set(told) == {"method", "path", "route", "status", "ms", "business"}
    for name in (house.owner.email, house.owner.name, house.business.name, "Low Croft"):
        assert name not in str(told)


def counted(method, route, status):
    return REQUESTS.labels(method, route, status)._value.get()


@pytest.mark.django_db
def test_requests_are_counted_by_route_and_never_by_address(lines):
    before = counted("GET", "none", "404"), counted("other", "none", "404")
    for number in range(3):
        Client().get(f"/nowhere/{number}/")
    Client().generic("INVENTED", "/nowhere/")
    assert counted("GET", "none", "404") == before[0] + 3
    assert counted("other", "none", "404") == before[1] + 1


@pytest.mark.django_db
def test_the_number_of_a_request_is_answered_and_stands_in_each_of_its_lines(caplog):
    caplog.set_level(logging.INFO, logger="trimops.access")
    caplog.handler.setFormatter(JsonLines())
    for given, status in (("from-the-proxy-1", 404), ("from-the-proxy-2", 200)):
        caplog.clear()
        address = "/nowhere/" if status == 404 else "/account/login/"
        answer = Client().get(address, headers={"X-Request-ID": given})
        assert (answer.status_code, answer["X-Request-ID"]) == (status, given)
        said = [json.loads(line) for line in caplog.text.splitlines()]
        loggers = {"trimops.access"} if status == 200 else {"trimops.access", "django.request"}
        assert {line["logger"] for line in said} == loggers
        assert {line["request_id"] for line in said} == {given}
    assert len(Client().get("/nowhere/", headers={"X-Request-ID": "a b"})["X-Request-ID"]) == 32


@pytest.mark.django_db
def test_a_file_of_the_look_is_told_only_to_who_asks_for_all(lines):
    Client().get("/static/trimops/mark.svg").close()
    assert lines() == []
